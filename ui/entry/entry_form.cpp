// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/entry/entry_form.h"

#include <QAbstractItemView>
#include <QCheckBox>
#include <QComboBox>
#include <QCompleter>
#include <QLabel>
#include <QLineEdit>
#include <QStringListModel>
#include <QVBoxLayout>
#include <algorithm>
#include <utility>

#include "ui/entry/flow.h"
#include "ui/theme/plain.h"
#include "ui/theme/row_delegate.h"
#include "ui/theme/tokens.h"
#include "ui/theme/type.h"
#include "ui/words/apply_words.h"
#include "ui/words/error_words.h"
#include "ui/words/figures.h"
#include "ui/workbench/workbench.h"

namespace wm::ui {

namespace {

constexpr int kFaultWidth = 230;

// "measured[2].value" belongs to the fields "value" and "measured".
bool isAbout(const base::Place& place, const std::string& field) {
    return place.field == field || (!place.lines.empty() && place.lines.front().list == field);
}

}  // namespace

tl::expected<store::Verb, Faults> Answers::answer(store::Verb verb) && {
    if (!faults_.empty())
        return tl::unexpected<Faults>(std::move(faults_));
    return verb;
}

EntryForm::EntryForm(Workbench& workbench, const QString& title, QWidget* parent)
    : QWidget(parent), workbench_(workbench), title_(title) {
    row_ = new Flow(kSpaceLine, kSpaceClose);
    lines_ = new QVBoxLayout(this);
    lines_->setContentsMargins(0, 0, 0, 0);
    lines_->setSpacing(kSpaceHair);
    lines_->addLayout(row_);
    trouble_ = new QLabel(this);
    trouble_->setObjectName(QStringLiteral("trouble"));
    trouble_->setTextFormat(Qt::PlainText);
    trouble_->setWordWrap(true);
    trouble_->hide();
    lines_->addWidget(trouble_);
    setAccessibleName(title);
    inputHeight_ = QLineEdit().sizeHint().height();
}

const book::Book& EntryForm::book() const {
    return *workbench_.book();
}

void EntryForm::correct(std::int64_t fact) {
    corrects_ = fact;
    title_ = tr("correct: %1").arg(title_);
    reason_ = addText(QStringLiteral("reason"), tr("why it is corrected (needed)"), QString(), 24);
}

tl::expected<store::Verb, Faults> EntryForm::saying() {
    auto said = verb();
    if (!said || !corrects_)
        return said;
    return store::Verb([fact = *corrects_, reason = typed(reason_),
                        again = *std::move(said)](const verbs::VerbContext& context) {
        return verbs::correct(context, fact, reason, again);
    });
}

QWidget* EntryForm::firstField() const {
    return first_ != nullptr || fields_.empty() ? first_ : fields_.front().input;
}

void EntryForm::place(const QString& name, const QString& label, QWidget* input) {
    Field field;
    field.box = new QWidget(this);
    field.input = input;
    input->setObjectName(name);
    input->setAccessibleName(label);
    auto* lines = new QVBoxLayout(field.box);
    lines->setContentsMargins(0, 0, 0, 0);
    lines->setSpacing(2);
    field.label =
        new QLabel(qobject_cast<QCheckBox*>(input) != nullptr ? QStringLiteral(" ") : label, field.box);
    field.label->setProperty("role", QStringLiteral("note"));
    field.label->setFont(noteFont(font()));
    field.label->setBuddy(input);
    field.fault = new QLabel(field.box);
    field.fault->setObjectName(name + QStringLiteral("-fault"));
    field.fault->setFont(noteFont(font()));
    field.fault->setTextFormat(Qt::PlainText);
    field.fault->setWordWrap(true);
    field.fault->setMinimumWidth(kFaultWidth);
    field.fault->hide();
    lines->addWidget(field.label);
    if (qobject_cast<QCheckBox*>(input) != nullptr || qobject_cast<QLabel*>(input) != nullptr)
        input->setFixedHeight(inputHeight_);
    lines->addWidget(input);
    lines->addWidget(field.fault);
    lines->addStretch();
    row_->addWidget(field.box);
    if (!fields_.empty())
        setTabOrder(fields_.back().input, input);
    fields_.push_back(field);
    field.box->show();
}

QLineEdit* EntryForm::addText(const QString& name, const QString& label, const QString& value, int letters) {
    auto* edit = new QLineEdit(value, this);
    edit->setFixedWidth(edit->fontMetrics().averageCharWidth() * letters + kSpaceSection);
    edit->setCursorPosition(0);
    connect(edit, &QLineEdit::textEdited, this, [this] { touched_ = true; });
    place(name, label, edit);
    return edit;
}

QLineEdit* EntryForm::addSuggested(const QString& name, const QString& label, const QString& value,
                                   const QStringList& choices, int letters) {
    auto* edit = addText(name, label, value, letters);
    auto* completer = new QCompleter(edit);
    completer->setFilterMode(Qt::MatchContains);
    completer->setCaseSensitivity(Qt::CaseInsensitive);
    completer->setModel(new QStringListModel(choices, completer));
    edit->setCompleter(completer);
    // A list that floats over the page needs an edge and room between its lines.
    completer->popup()->setItemDelegate(new RowDelegate(completer->popup()));
    completer->popup()->setStyleSheet(
        QStringLiteral("QAbstractItemView { border: 1px solid palette(dark); }"));
    return edit;
}

void EntryForm::suggest(QLineEdit* field, const QStringList& choices) {
    if (auto* model = qobject_cast<QStringListModel*>(field->completer()->model()))
        model->setStringList(choices);
}

QLineEdit* EntryForm::addDay(const QString& name, const QString& label, const QString& value, Lean lean) {
    auto* edit = addText(name, label, value, 12);
    QLabel* says = fields_.back().label;
    const auto gloss = [this, says, label, lean, edit] {
        const auto today = workbench_.today();
        const auto day = parseDay("date", edit->text(), today, lean);
        says->setText(day ? label + QStringLiteral(" · ") + dayWords(*day, today) : label);
    };
    connect(edit, &QLineEdit::textChanged, this, gloss);
    gloss();
    return edit;
}

QComboBox* EntryForm::addBox(const QString& name, const QString& label) {
    auto* box = new QComboBox(this);
    connect(box, &QComboBox::activated, this, [this] { touched_ = true; });
    place(name, label, box);
    return box;
}

QCheckBox* EntryForm::addTick(const QString& name, const QString& label, bool isTicked) {
    auto* tick = new QCheckBox(asCaption(label), this);
    tick->setChecked(isTicked);
    connect(tick, &QCheckBox::clicked, this, [this] { touched_ = true; });
    place(name, label, tick);
    return tick;
}

QComboBox* EntryForm::addMachine(std::optional<MachineId> chosen) {
    auto* box = addBox(QStringLiteral("machine"), tr("machine"));
    for (const auto* machine : book().machines())
        box->addItem(text(machine->name), asData(machine->id));
    const auto* card = chosen ? book().ledger().find<items::Machine>(*chosen) : nullptr;
    if (card == nullptr)
        return box;
    // One that is gone: what was noted on it can still be put right.
    if (box->findData(asData(card->id)) < 0)
        box->addItem(text(card->name), asData(card->id));
    chooseIn(*box, card->id);
    return box;
}

QLineEdit* EntryForm::addPerson(const QString& name, const QString& label, std::optional<PersonId> person) {
    QStringList names;
    QString value;
    for (const auto& each : book().ledger().all<items::Person>()) {
        names << text(each.name);
        if (each.id == person)
            value = names.back();
    }
    return addSuggested(name, label, value, names, 10);
}

QLabel* EntryForm::addCaption(const QString& words) {
    auto* caption = new QLabel(words, this);
    caption->setProperty("role", QStringLiteral("note"));
    caption->setTextFormat(Qt::PlainText);
    place(QStringLiteral("caption"), QStringLiteral(" "), caption);
    return caption;
}

QLabel* EntryForm::addNote(const QString& words) {
    auto* note = new QLabel(words, this);
    note->setProperty("role", QStringLiteral("note"));
    note->setTextFormat(Qt::PlainText);
    note->setWordWrap(true);
    note->setVisible(!words.isEmpty());
    lines_->insertWidget(lines_->count() - 1, note);
    return note;
}

void EntryForm::remove(QWidget* field) {
    const auto at = std::find_if(fields_.begin(), fields_.end(),
                                 [field](const Field& each) { return each.input == field; });
    if (at == fields_.end())
        return;
    row_->removeWidget(at->box);
    delete at->box;
    fields_.erase(at);
}

EntryForm::Field* EntryForm::fieldFor(const base::Place& place) {
    for (auto& field : fields_)
        if (isAbout(place, field.input->objectName().toStdString()))
            return &field;
    return nullptr;
}

void EntryForm::showFaults(const Faults& faults) {
    clearFaults();
    const QColor over = tokensFor(palette()).over;
    QWidget* first = nullptr;
    for (const auto& fault : faults) {
        Field* field = fieldFor(fault.field);
        if (field == nullptr) {
            showTrouble(wordsFor(fault));
            continue;
        }
        inkWith(field->fault, over);
        field->fault->setText(wordsFor(fault));
        field->fault->show();
        field->input->setAccessibleDescription(field->fault->text());
        if (first == nullptr)
            first = field->input;
    }
    if (first != nullptr)
        first->setFocus();
    updateGeometry();
}

void EntryForm::askOfMeter(const Faults& faults) {
    const auto asks = [](const base::Error& fault) { return fault.fault == base::Fault::MeterStood; };
    if (std::none_of(faults.begin(), faults.end(), asks))
        return;
    if (meterIsRight_ == nullptr)
        meterIsRight_ = addTick(QStringLiteral("meterIsRight"), tr("the meter is right"), false);
    meterIsRight_->setFocus();
}

bool EntryForm::meterIsRight() const {
    return meterIsRight_ != nullptr && meterIsRight_->isChecked();
}

void EntryForm::showTrouble(const QString& words) {
    inkWith(trouble_, tokensFor(palette()).over);
    trouble_->setText(trouble_->isHidden() ? words : trouble_->text() + QLatin1Char('\n') + words);
    trouble_->show();
}

void EntryForm::clearFaults() {
    trouble_->hide();
    for (auto& field : fields_) {
        field.fault->hide();
        field.input->setAccessibleDescription(QString());
    }
}

std::string EntryForm::typed(const QLineEdit* field) const {
    return field->text().trimmed().toStdString();
}

base::Result<std::optional<units::Hours>> EntryForm::hoursIn(const QLineEdit* field) const {
    if (typed(field).empty())
        return std::optional<units::Hours>();
    return units::parseHours(field->objectName().toStdString(), typed(field)).map([](units::Hours hours) {
        return std::optional(hours);
    });
}

base::Result<std::int64_t> EntryForm::countIn(const QLineEdit* field, std::int64_t most) const {
    if (typed(field).empty())
        return std::int64_t{0};
    return units::parseCount(field->objectName().toStdString(), typed(field), most);
}

base::Result<calendar::Date> EntryForm::dayIn(const QLineEdit* field, Lean lean) const {
    return parseDay(field->objectName().toStdString(), field->text(), workbench_.today(), lean);
}

base::Result<std::optional<calendar::Date>> EntryForm::dayOrNothingIn(const QLineEdit* field,
                                                                      Lean lean) const {
    if (typed(field).empty())
        return std::optional<calendar::Date>();
    return dayIn(field, lean).map([](calendar::Date day) { return std::optional(day); });
}

base::Result<std::optional<PersonId>> EntryForm::personIn(const QLineEdit* field) const {
    const QString name = field->text().trimmed();
    if (name.isEmpty())
        return std::optional<PersonId>();
    for (const auto& person : book().ledger().all<items::Person>())
        if (text(person.name).compare(name, Qt::CaseInsensitive) == 0)
            return std::optional(person.id);
    return base::refuse(base::Fault::Unknown, field->objectName().toStdString(), name.toStdString(),
                        "a person of this file; add one from the File menu");
}

std::optional<MachineId> EntryForm::machineIn(const QComboBox* field) const {
    return chosenIfAny<MachineId>(*field);
}

base::Result<MachineId> EntryForm::needMachineIn(const QComboBox* field) const {
    const auto machine = machineIn(field);
    if (!machine)
        return base::refuse(base::Fault::Empty, field->objectName().toStdString());
    return *machine;
}

}  // namespace wm::ui
