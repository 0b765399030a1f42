// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/generic_panel.h"

#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPainter>
#include <QVBoxLayout>

#include "ui/entry/choice.h"
#include "ui/entry/flow.h"
#include "ui/pages/columns.h"
#include "ui/theme/plain.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/figures.h"
#include "ui/words/generic_words.h"
#include "ui/words/name_words.h"

namespace wm::ui {

namespace {

template <class E>
QComboBox* choice(QWidget* parent, const QString& name, const QString& words) {
    auto* box = new QComboBox(parent);
    box->setObjectName(name);
    box->setAccessibleName(words);
    addChoices<E>(*box, eachOf<E>([&](E value) { return words + QStringLiteral(": ") + nameWords(value); }));
    return box;
}

bool endsByAngle(const fastening::JointVersion& joint) {
    const QString stages = text(joint.stages) + text(joint.sequenceNote);
    return stages.contains(QLatin1String("deg")) || stages.contains(QChar(0x00B0)) ||
           stages.contains(QLatin1String("angle"), Qt::CaseInsensitive);
}

}  // namespace

GenericPanel::GenericPanel(QWidget* parent)
    : QWidget(parent),
      thread_(new QLineEdit(this)),
      class_(new QComboBox(this)),
      hole_(choice<fastening::Hole>(this, QStringLiteral("genericHole"), tr("hole"))),
      lubrication_(choice<fastening::Lubrication>(this, QStringLiteral("genericLubrication"), tr("thread"))),
      asked_(new QWidget(this)),
      title_(plainLabel(this, "section")),
      band_(plainLabel(this, nullptr)),
      caution_(plainLabel(this, nullptr, "genericCaution")),
      words_(plainLabel(this, "note")) {
    setObjectName(QStringLiteral("genericPanel"));
    thread_->setObjectName(QStringLiteral("genericThread"));
    thread_->setAccessibleName(tr("Thread"));
    thread_->setPlaceholderText(QStringLiteral("M8x1.25"));
    class_->setObjectName(QStringLiteral("genericClass"));
    class_->setAccessibleName(tr("Class on the bolt's head"));
    class_->addItem(tr("class on the head: ?"), QString());
    for (const QString& each : text(fastening::propertyClasses()).split(QStringLiteral(", ")))
        class_->addItem(each, each);
    title_->setText(genericTitle());
    band_->setObjectName(QStringLiteral("genericBand"));
    words_->setObjectName(QStringLiteral("genericWords"));
    thread_->setMinimumWidth(fontMetrics().averageCharWidth() * 12 + kSpaceSection);
    auto* row = new Flow(kSpaceClose, kSpaceHair);
    asked_->setLayout(row);
    for (QWidget* each : std::initializer_list<QWidget*>{thread_, class_, hole_, lubrication_})
        row->addWidget(each);
    auto* lines = new QVBoxLayout(this);
    lines->setContentsMargins(kSpaceLine, kSpaceClose, kSpaceLine, kSpaceClose);
    lines->setSpacing(kSpaceHair);
    for (QWidget* each : std::initializer_list<QWidget*>{title_, asked_, band_, caution_, words_})
        lines->addWidget(each);
    connect(thread_, &QLineEdit::textChanged, this, &GenericPanel::reckon);
    for (QComboBox* box : {class_, hole_, lubrication_})
        connect(box, &QComboBox::currentIndexChanged, this, &GenericPanel::reckon);
}

void GenericPanel::setJoint(const fastening::JointVersion* joint) {
    setVisible(joint != nullptr && !joint->torque);
    if (joint == nullptr || joint->torque)
        return;
    ask_.kind = joint->kind;
    ask_.name = joint->name;
    ask_.byAngle = endsByAngle(*joint);
    thread_->setText(text(joint->thread));
    chooseIn(*class_, QString());
    reckon();
}

void GenericPanel::reckon() {
    ask_.thread = thread_->text().toStdString();
    ask_.propertyClass = class_->currentData().toString().toStdString();
    ask_.hole = chosenOf<fastening::Hole>(*hole_);
    ask_.lubrication = chosenOf<fastening::Lubrication>(*lubrication_);
    const auto band = fastening::genericBand(ask_);
    isBand_ = band.has_value();
    band_->setVisible(isBand_);
    caution_->setVisible(isBand_);
    const bool final = !band && (band.error().why == fastening::GenericWhy::DangerousKind ||
                                 band.error().why == fastening::GenericWhy::ByAngle);
    asked_->setVisible(!final);
    title_->setVisible(!final);
    if (band) {
        band_->setText(genericBandText(*band, decimalMark()));
        caution_->setText(genericCaution());
        QStringList lines;
        for (const QString& each : genericAssumptions(*band, decimalMark()))
            lines << QStringLiteral("· ") + each;
        words_->setText(lines.join(QLatin1Char('\n')));
    } else if (!final && (ask_.thread.empty() || ask_.propertyClass.empty())) {
        words_->setText(
            tr("The manual is silent? Give the thread and the class that stands on the bolt's head."));
    } else {
        words_->setText(genericRefusalText(band.error()));
    }
    settle(this);
    update();
}

// A broken frame with hatched edge: nobody takes this for a figure from the manual.
void GenericPanel::paintEvent(QPaintEvent* /*event*/) {
    QPainter painter(this);
    const Tokens tokens = tokensFor(palette());
    painter.setPen(QPen(tokens.pencil, 1.4, Qt::DashLine));
    painter.drawRect(QRectF(rect()).adjusted(0.7, 0.7, -0.7, -0.7));
    if (isBand_)
        painter.fillRect(QRect(0, 0, kSpaceClose, height()), QBrush(tokens.due, Qt::BDiagPattern));
}

}  // namespace wm::ui
