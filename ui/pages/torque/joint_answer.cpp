// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/pages/torque/joint_answer.h"

#include <QLabel>
#include <QVBoxLayout>

#include "core/book/drawer_of_book.h"
#include "core/units/convert.h"
#include "ui/pages/columns.h"
#include "ui/pages/torque/big_figure.h"
#include "ui/pages/torque/order_picture.h"
#include "ui/pages/torque/torque_rows.h"
#include "ui/theme/plain.h"
#include "ui/theme/type.h"
#include "ui/words/figures.h"

namespace wm::ui {

namespace {

// A figure and its unit apart: the face for digits is for digits alone.
std::pair<QString, QString> split(const fastening::Figure& figure, std::string_view unit) {
    const QString words = text(fastening::figureText(figure, decimalMark(), unit));
    if (!figure.low && !figure.high)
        return {words, {}};
    const bool converts = !unit.empty() && units::convert(1, figure.unit, unit).has_value();
    const QString symbol =
        converts ? QString::fromUtf8(unit.data(), static_cast<qsizetype>(unit.size())) : text(figure.unit);
    return {words.endsWith(symbol) ? words.left(words.size() - symbol.size()).trimmed() : words, symbol};
}

QString missingWords(const fastening::Figure& figure) {
    switch (figure.kind) {
        case fastening::FigureKind::Joint:
            return JointAnswer::tr(
                "torque not typed yet: look it up in the service manual and type it below");
        case fastening::FigureKind::Limit:
            return JointAnswer::tr("limit not typed yet: it is entered with its job on Tasks");
        case fastening::FigureKind::Quantity:
        case fastening::FigureKind::Setting:
            break;
    }
    return JointAnswer::tr("nothing noted");
}

QString sourceWords(const fastening::Figure& figure) {
    if (!figure.low && !figure.high)
        return figure.kind == fastening::FigureKind::Joint ? QString() : text(figure.source);
    QString words = text(figure.source);
    if (!figure.page.empty())
        words += JointAnswer::tr(", p. %1").arg(text(figure.page));
    if (figure.kind == fastening::FigureKind::Setting)
        return words;
    return figure.confirmed ? JointAnswer::tr("%1, confirmed").arg(words)
                            : JointAnswer::tr("NOT CONFIRMED against the service manual: %1")
                                  .arg(words.isEmpty() ? JointAnswer::tr("no source") : words);
}

}  // namespace

JointAnswer::JointAnswer(QWidget* parent)
    : QWidget(parent),
      name_(plainLabel(this, "section", "answerName")),
      about_(plainLabel(this, "note", "answerAbout")),
      handTight_(plainLabel(this, nullptr, "answerHandTight")),
      figure_(new BigFigure(this)),
      printed_(plainLabel(this, nullptr, "answerPrinted")),
      notes_(plainLabel(this, nullptr, "answerNotes")),
      order_(new OrderPicture(this)),
      source_(plainLabel(this, "note", "answerSource")),
      wrench_(plainLabel(this, nullptr, "answerWrench")),
      last_(plainLabel(this, "note", "answerLast")) {
    name_->setFont(pageTitleFont(font()));
    auto* lines = linesOf(this);
    lines->setSpacing(kSpaceHair);
    for (QWidget* each : std::initializer_list<QWidget*>{name_, about_, handTight_, figure_, printed_,
                                                         source_, notes_, order_, wrench_, last_})
        lines->addWidget(each);
}

void JointAnswer::show(const book::Book& book, const fastening::Figure& figure, std::string_view unit) {
    name_->setText(text(figure.name));
    QString about = text(figure.machineName);
    if (!figure.about.empty())
        about += QStringLiteral(" · ") + text(figure.about);
    sayIn(about_, about);
    const auto [digits, symbol] = split(figure, unit);
    const bool known = !digits.isEmpty();
    figure_->setVisible(known);
    if (known)
        figure_->setFigure(digits, symbol,
                           !figure.confirmed && figure.kind != fastening::FigureKind::Setting);
    const bool converted = known && symbol != text(figure.unit) && !figure.unit.empty() && !symbol.isEmpty();
    sayIn(printed_, !known      ? missingWords(figure)
                    : converted ? tr("as printed: %1").arg(text(fastening::figureText(figure, decimalMark())))
                                : QString());
    sayIn(source_, sourceWords(figure));
    const auto* joint =
        figure.kind == fastening::FigureKind::Joint ? book.joint(JointId(figure.id)) : nullptr;
    order_->setJoint(joint);
    notes_->setVisible(joint != nullptr);
    wrench_->setVisible(joint != nullptr);
    last_->setVisible(joint != nullptr);
    sayIn(handTight_, joint != nullptr ? openWords(book, *joint) : QString(), true);
    if (joint != nullptr)
        showJoint(book, *joint);
}

void JointAnswer::showJoint(const book::Book& book, const fastening::JointVersion& joint) {
    QStringList notes;
    for (const QString& note : jointNotes(joint))
        notes << note;
    sayIn(notes_, notes.join(QStringLiteral(" · ")));
    sayIn(wrench_, wrenchWords(book, joint));
    sayIn(last_, lastWords(book, joint.joint));
}

}  // namespace wm::ui
