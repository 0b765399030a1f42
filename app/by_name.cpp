// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/by_name.h"

#include <QStringList>

#include "ui/words/error_words.h"
#include "ui/words/field_words.h"

namespace wm::app {

namespace {

constexpr qsizetype kMostNamed = 12;

template <class T>
struct Candidate {
    const T* thing;
    QString name;
    QString code;  ///< may be empty
};

QString listed(const QStringList& names) {
    QString list = names.mid(0, kMostNamed).join(", ");
    if (names.size() > kMostNamed)
        list += ", ...";
    return list;
}

template <class T>
Answer<const T*> pickOne(const char* field, const QString& words,
                         const std::vector<Candidate<T>>& candidates) {
    const QString wanted = words.simplified().toCaseFolded();
    std::vector<const Candidate<T>*> whole;
    std::vector<const Candidate<T>*> partly;
    QStringList names;
    for (const Candidate<T>& candidate : candidates) {
        const QString name = candidate.name.simplified().toCaseFolded();
        const QString code = candidate.code.toCaseFolded();
        names << candidate.name;
        if (name == wanted || (!code.isEmpty() && code == wanted))
            whole.push_back(&candidate);
        else if (!wanted.isEmpty() && (name.contains(wanted) || code.contains(wanted)))
            partly.push_back(&candidate);
    }
    const auto& found = whole.empty() ? partly : whole;
    if (found.size() == 1)
        return found.front()->thing;
    if (found.empty())
        return fail(
            base::Error{base::Fault::Unknown, field, words.toStdString(), listed(names).toStdString()});
    QStringList fitting;
    for (const auto* candidate : found)
        fitting << (candidate->code.isEmpty() ? candidate->name : candidate->code);
    return fail(Exit::Refused, QString("The %1 %2 fits several: say which of %3.")
                                   .arg(ui::fieldWords(field), ui::quoted(words), listed(fitting)));
}

}  // namespace

Answer<const items::Machine*> findMachine(const book::Book& book, const QString& words) {
    std::vector<Candidate<items::Machine>> candidates;
    for (const items::Machine* machine : book.machines())
        candidates.push_back({machine, fromUtf8(machine->name), {}});
    if (!words.isEmpty())
        return pickOne("machine", words, candidates);
    if (candidates.size() == 1)
        return candidates.front().thing;
    if (candidates.empty())
        return fail(Exit::Refused, "There is no machine in this file: add one in the window first.");
    QStringList names;
    for (const auto& candidate : candidates)
        names << candidate.name;
    return fail(Exit::Refused,
                "There are several machines: say which with --machine: " + listed(names) + '.');
}

Answer<const upkeep::TaskVersion*> findTask(const book::Book& book, MachineId machine, const QString& words) {
    std::vector<Candidate<upkeep::TaskVersion>> candidates;
    for (const upkeep::TaskVersion* task : book.tasks(machine))
        candidates.push_back({task, fromUtf8(task->name), fromUtf8(task->code)});
    return pickOne("task", words, candidates);
}

Answer<const upkeep::Snag*> findSnag(const book::Book& book, MachineId machine, const QString& words) {
    std::vector<Candidate<upkeep::Snag>> candidates;
    for (const book::OpenSnag& open : book.snags(machine))
        candidates.push_back({open.snag, fromUtf8(open.snag->what), {}});
    return pickOne("snag", words, candidates);
}

Answer<const fastening::JointVersion*> findJoint(const book::Book& book, MachineId machine,
                                                 const QString& words) {
    std::vector<Candidate<fastening::JointVersion>> candidates;
    for (const fastening::JointVersion* joint : book.joints(machine))
        candidates.push_back({joint, fromUtf8(joint->name), fromUtf8(joint->code)});
    return pickOne("joint", words, candidates);
}

Answer<const fastening::Tool*> findTool(const book::Book& book, const QString& words) {
    std::vector<Candidate<fastening::Tool>> candidates;
    for (const fastening::Tool& tool : book.ledger().all<fastening::Tool>())
        if (tool.active)
            candidates.push_back({&tool, fromUtf8(tool.name), {}});
    return pickOne("tool", words, candidates);
}

Answer<const stock::StockLine*> findStockLine(const book::Book& book, const QString& words) {
    std::vector<Candidate<stock::StockLine>> candidates;
    for (const stock::StockLine& line : book.ledger().all<stock::StockLine>())
        if (line.active)
            candidates.push_back({&line, fromUtf8(line.name), fromUtf8(line.partNumber)});
    return pickOne("used", words, candidates);
}

Answer<const items::Person*> findPerson(const book::Book& book, const QString& words) {
    std::vector<Candidate<items::Person>> candidates;
    for (const items::Person& person : book.ledger().all<items::Person>())
        candidates.push_back({&person, fromUtf8(person.name), {}});
    return pickOne("person", words, candidates);
}

Answer<const outlook::Event*> findEvent(const book::Book& book, const QString& words) {
    std::vector<Candidate<outlook::Event>> candidates;
    for (const outlook::Event& event : book.ledger().all<outlook::Event>())
        if (!event.calledOff)
            candidates.push_back({&event, fromUtf8(event.name), {}});
    return pickOne("event", words, candidates);
}

}  // namespace wm::app
