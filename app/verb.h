// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <QCommandLineOption>
#include <QCommandLineParser>
#include <QString>
#include <QStringList>
#include <optional>
#include <string>
#include <vector>

#include "app/console.h"
#include "core/base/names.h"
#include "core/units/quantity.h"

namespace wm::app {

/// What was said on the command line after the verb.
class Call {
  public:
    Call(const QCommandLineParser& parser, Console& console) : parser_(parser), console_(console) {}

    [[nodiscard]] Console& console() const { return console_; }
    /// The n-th word that is no option: 0 is the file.
    [[nodiscard]] QString word(qsizetype at) const { return parser_.positionalArguments().value(at); }
    [[nodiscard]] bool has(const char* option) const { return parser_.isSet(option); }
    [[nodiscard]] QString value(const char* option) const { return parser_.value(option); }
    [[nodiscard]] QStringList values(const char* option) const { return parser_.values(option); }
    [[nodiscard]] std::string text(const char* option) const { return value(option).toStdString(); }

    /// The day of --on, or nothing if it was not said.
    [[nodiscard]] Answer<std::optional<calendar::Date>> day(const char* option) const;
    [[nodiscard]] Answer<std::optional<units::Hours>> hours(const char* option) const;
    [[nodiscard]] Answer<std::int64_t> count(const char* option, std::int64_t most) const;
    /// One of the words of an enumeration, or `otherwise` if the option was not given.
    template <class E>
    [[nodiscard]] Answer<E> oneOf(const char* option, E otherwise) const;

  private:
    const QCommandLineParser& parser_;
    Console& console_;
};

struct Positional {
    const char* name;
    const char* words;
};

/// A headless verb: how it is called and what it does.
struct VerbSpec {
    QString name;
    QString summary;
    std::vector<Positional> words;
    QList<QCommandLineOption> options;
    QString examples;
    Answer<void> (*run)(const Call&);
};

VerbSpec newVerb();
VerbSpec dueVerb();
VerbSpec logVerb();
VerbSpec recordVerb();
VerbSpec baselineVerb();
VerbSpec scheduleVerb();
VerbSpec tightenedVerb();
VerbSpec planVerb();
VerbSpec stepsVerb();
VerbSpec sheetVerb();
VerbSpec cardVerb();
VerbSpec drawerVerb();
VerbSpec torqueVerb();
VerbSpec wrenchVerb();   ///< without a file
VerbSpec genericVerb();  ///< without a file
VerbSpec importVerb();
VerbSpec exportVerb();
VerbSpec checkVerb();
VerbSpec undoVerb();
VerbSpec redoVerb();

/// In the order in which --help lists them.
std::vector<VerbSpec> allVerbs();

// Options that several verbs share.
QCommandLineOption machineOption();
QCommandLineOption onOption(const QString& words);
QCommandLineOption jsonOption();

template <class E>
Answer<E> Call::oneOf(const char* option, E otherwise) const {
    if (!has(option))
        return otherwise;
    const auto named = base::fromName<E>(text(option));
    if (named)
        return *named;
    std::string all;
    for (const std::string_view name : base::Names<E>::names)
        all += (all.empty() ? "" : ", ") + std::string(name);
    return fail(base::Error{base::Fault::Unknown, "--" + std::string(option), text(option), all});
}

}  // namespace wm::app
