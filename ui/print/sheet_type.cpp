// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/sheet_type.h"

#include <QFontDatabase>
#include <QFontMetricsF>
#include <QRegularExpression>
#include <QTextLayout>

namespace wm::ui {

namespace {

// The monospaced regular of B612 also answers to the family's plain name, and then hides the proportional
// one: too wide for running text.
bool isMonospaced(const QFont& font) {
    const QFontMetricsF metrics(font);
    return metrics.horizontalAdvance(QLatin1Char('i')) >= metrics.horizontalAdvance(QLatin1Char('m'));
}

QString paperFace(bool bold) {
    for (const QString& face : {QStringLiteral("B612"), QStringLiteral("DejaVu Sans")}) {
        QFont font(face);
        font.setBold(bold);
        if (QFontDatabase::hasFamily(face) && !isMonospaced(font))
            return face;
    }
    return QFontDatabase::systemFont(QFontDatabase::GeneralFont).family();
}

QString withUnitsTied(QString text) {
    static const QRegularExpression gap(
        QStringLiteral("(?<=\\d) (?=(N·m|lbf·ft|lbf·in|kgf·m|kgf·cm|h|min|ml|g|mm|bar|psi|clicks|%)(\\W|$))"),
        QRegularExpression::UseUnicodePropertiesOption);
    return text.replace(gap, QString(QChar::Nbsp));
}

}  // namespace

QFont paperFont(int size, bool bold) {
    static const QString regularFace = paperFace(false);
    static const QString boldFace = paperFace(true);
    QFont font(bold ? boldFace : regularFace);
    font.setPixelSize(size);
    font.setBold(bold);
    font.setHintingPreference(QFont::PreferNoHinting);
    // Without ligatures, so that "confirmed" can be searched for in the PDF. Scripts that need shaping get
    // it.
    font.setStyleStrategy(QFont::PreferNoShaping);
    return font;
}

double widthOf(const QString& text, const QFont& font) {
    return QFontMetricsF(font).horizontalAdvance(text);
}

TextLine oneLine(const QString& text, const QFont& font) {
    const QFontMetricsF metrics(font);
    return {text, font, metrics.horizontalAdvance(text), metrics.height(), metrics.ascent()};
}

std::vector<TextLine> wrapped(const QString& text, const QFont& font, double width) {
    std::vector<TextLine> lines;
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    const QStringList paragraphs = withUnitsTied(text).split(QLatin1Char('\n'));
    for (const QString& paragraph : paragraphs) {
        if (paragraph.trimmed().isEmpty())
            continue;
        QTextLayout layout(paragraph.trimmed(), font);
        layout.setTextOption(option);
        layout.beginLayout();
        for (QTextLine line = layout.createLine(); line.isValid(); line = layout.createLine()) {
            line.setLineWidth(width);
            lines.push_back(oneLine(layout.text().mid(line.textStart(), line.textLength()).trimmed(), font));
        }
        layout.endLayout();
    }
    return lines;
}

TextLine elided(const QString& text, const QFont& font, double width) {
    return oneLine(QFontMetricsF(font).elidedText(text, Qt::ElideRight, width), font);
}

}  // namespace wm::ui
