// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/order_picture.h"

#include <QPainter>
#include <QRegularExpression>

#include "ui/words/figures.h"

namespace wm::ui {

namespace {

constexpr int kPicture = 168;
constexpr int kLine = 30;

}  // namespace

JointOrder orderOf(const fastening::JointVersion& joint) {
    JointOrder order{joint.sequence, static_cast<int>(joint.count), static_cast<int>(joint.sequenceStep), {}};
    if (joint.sequence == fastening::Sequence::Listed)
        for (const QString& part : text(joint.sequenceNote).split(QLatin1Char(';'), Qt::SkipEmptyParts))
            // The picture numbers them itself.
            order.names.push_back(
                part.trimmed().remove(QRegularExpression(QStringLiteral("^\\d+[.)]?\\s+"))));
    return order;
}

OrderPicture::OrderPicture(QWidget* parent) : QWidget(parent) {
    setObjectName(QStringLiteral("jointOrder"));
    setAccessibleName(tr("Order in which the fasteners are tightened"));
    hide();
}

void OrderPicture::setJoint(const fastening::JointVersion* joint) {
    order_ = joint == nullptr ? JointOrder{} : orderOf(*joint);
    const bool drawn = joint != nullptr && order_.sequence != fastening::Sequence::Any &&
                       !tighteningSequence(order_).empty() && (order_.count > 1 || order_.names.size() > 1);
    setVisible(drawn);
    updateGeometry();
    update();
}

QSize OrderPicture::sizeHint() const {
    if (order_.sequence == fastening::Sequence::Listed)
        return {kPicture, kLine * static_cast<int>(order_.names.size())};
    return {kPicture, kPicture};
}

void OrderPicture::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    QRectF place = rect();
    if (order_.sequence != fastening::Sequence::Listed)
        place.setWidth(std::min(place.width(), 2.0 * kPicture));
    paintJointOrder(painter, place, order_, font(), tokensFor(palette()));
}

}  // namespace wm::ui
