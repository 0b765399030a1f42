// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/headless.h"

#include <algorithm>

#include "app/logging.h"
#include "app/verb.h"
#include "app/version.h"
#include "core/store/store.h"
#include "ui/words/error_words.h"
#include "ui/workbench/file_names.h"
#include "ui/workbench/read_bytes.h"

namespace wm::app {

namespace {

constexpr const char* kExitCodes =
    "Exit codes:\n"
    "  0  done\n"
    "  1  check found something wrong with the file\n"
    "  2  the command line can't be understood\n"
    "  3  what was given was refused; nothing was written\n"
    "  4  the file can't be opened\n"
    "  5  the file or the output can't be written; nothing was changed, unless the words say so\n"
    "  6  a fault of the program itself; the words say whether something was written\n";

int say(Console& console, Exit exit, const QString& words) {
    console.err << "witnessmark: " << words.simplified() << '\n';
    console.err.flush();
    return static_cast<int>(exit);
}

// What was answered is out, or it is said that it is not.
int ended(Console& console) {
    console.out.flush();
    if (console.out.status() == QTextStream::Ok)
        return static_cast<int>(Exit::Done);
    return say(console, Exit::CannotWrite,
               console.wrote
                   ? "What you asked for is in the file, but the answer could not be written: make room "
                     "where it goes, and do not say it again."
                   : "The answer could not be written: make room where it goes.");
}

void printGeneralHelp(Console& console) {
    console.out << "Witnessmark, a workbench for the mechanic of a few race bikes.\n\n"
                   "  witnessmark [FILE]                 open the window\n"
                   "  witnessmark VERB FILE [options]    do one thing without it\n\n"
                   "Verbs:\n";
    qsizetype widest = 0;
    for (const VerbSpec& verb : allVerbs())
        widest = std::max(widest, verb.name.size());
    for (const VerbSpec& verb : allVerbs())
        console.out << "  " << verb.name.leftJustified(widest + 2) << verb.summary << '\n';
    console.out
        << "\n"
           "Options:\n"
           "  -h, --help     this, or after a verb what that verb takes\n"
           "  -v, --version  the version\n"
           "  --verbose      say on standard error what happens to the file (the window takes it too)\n\n"
        << kExitCodes;
}

void setUp(QCommandLineParser& parser, const VerbSpec& verb) {
    parser.setApplicationDescription(verb.summary + "\n\n" + verb.examples + '\n' + kExitCodes);
    for (const Positional& word : verb.words)
        parser.addPositionalArgument(word.name, word.words);
    parser.addOptions(verb.options);
    parser.addOption({"verbose", "Say on standard error what happens to the file."});
    parser.addOption({{"h", "help"}, "Show this."});
}

// Qt names the program by its path and does not know of verbs.
QString helpOf(const QCommandLineParser& parser, const VerbSpec& verb) {
    QString usage = "Usage: witnessmark " + verb.name;
    for (const Positional& word : verb.words)
        usage += QString(" ") + word.name;
    const QString help = parser.helpText();
    return usage + " [options]" + help.mid(help.indexOf('\n'));
}

// Bytes that are no UTF-8 make the name of a file; kept as a text they would be another one than was given.
std::optional<Failure> notText(const QCommandLineParser& parser, const VerbSpec& verb) {
    for (const QCommandLineOption& option : verb.options)
        for (const QString& value : parser.values(option))
            if (value.contains(QChar::ReplacementCharacter) || store::isOdd(value))
                return fail(base::Error{base::Fault::NotText,
                                        "--" + option.names().constFirst().toStdString(),
                                        {},
                                        {}})
                    .value();
    return std::nullopt;
}

// "-dash.witnessmark" reads as so many options of one letter each.
QString dashHint(const QStringList& arguments) {
    const auto isFile = [](const QString& word) {
        const bool isShort = word.size() > 2 && word.startsWith('-') && word.at(1).isLetter();
        return isShort && (word.contains('.') || ui::isThere(word));
    };
    const auto at = std::find_if(arguments.begin(), arguments.end(), isFile);
    return at == arguments.end() ? QString()
                                 : "; a file whose name begins with a dash is given as " + asArgument(*at);
}

int run(const VerbSpec& verb, const QStringList& arguments, Console& console) {
    const QString hint = "; see witnessmark " + verb.name + " --help.";
    QCommandLineParser parser;
    parser.setOptionsAfterPositionalArgumentsMode(QCommandLineParser::ParseAsOptions);
    // "-joint" is one option, not five of a letter each.
    parser.setSingleDashWordOptionMode(QCommandLineParser::ParseAsLongOptions);
    setUp(parser, verb);
    if (!parser.parse(QStringList{"witnessmark " + verb.name} + arguments)) {
        QString words = parser.errorText().simplified();
        if (words.endsWith('.'))
            words.chop(1);
        return say(console, Exit::Usage, words + dashHint(arguments) + hint);
    }
    if (parser.isSet("help")) {
        console.out << helpOf(parser, verb);
        return ended(console);
    }
    const qsizetype words = parser.positionalArguments().size();
    const auto wanted = static_cast<qsizetype>(verb.words.size());
    if (words < wanted)
        return say(console, Exit::Usage,
                   QString("%1 is missing").arg(verb.words[static_cast<std::size_t>(words)].name) + hint);
    if (words > wanted)
        return say(console, Exit::Usage,
                   "There is a word too many: " + ui::quoted(parser.positionalArguments().at(wanted)) + hint);
    if (const auto failure = notText(parser, verb))
        return say(console, failure->exit, failure->words);
    const Logging logging(parser.isSet("verbose"));
    const auto answer = guarded(console, [&] { return verb.run(Call(parser, console)); });
    console.out.flush();
    if (!answer)
        return say(console, answer.error().exit, answer.error().words);
    return ended(console);
}

}  // namespace

bool isHeadless(const QStringList& arguments) {
    const QStringList words = withoutVerbose(arguments);
    if (words.isEmpty())
        return false;
    const bool fileAlone = words.size() == 1 && !words.front().startsWith('-');
    const auto verbs = allVerbs();
    const bool isVerb = std::any_of(verbs.begin(), verbs.end(),
                                    [&](const VerbSpec& verb) { return verb.name == words.front(); });
    return isVerb || !fileAlone || !ui::isThere(words.front());
}

QStringList withoutVerbose(const QStringList& arguments) {
    QStringList words = arguments;
    words.removeAll(QStringLiteral("--verbose"));
    return words;
}

int runHeadless(const QStringList& arguments, Console& console) {
    const QString first = arguments.value(0);
    for (const VerbSpec& verb : allVerbs())
        if (verb.name == first)
            return run(verb, arguments.mid(1), console);
    if (first == "--help" || first == "-h" || first == "help") {
        printGeneralHelp(console);
        return ended(console);
    }
    if (first == "--version" || first == "-v") {
        console.out << "witnessmark " << fromUtf8(kVersion) << '\n';
        return ended(console);
    }
    if (first.contains(QChar::ReplacementCharacter))
        return say(console, Exit::CannotOpen, ui::wordsFor(ui::Unread::OddName, first));
    return say(console, Exit::Usage,
               "There is no verb and no file " + ui::quoted(first) + "; see witnessmark --help.");
}

}  // namespace wm::app
