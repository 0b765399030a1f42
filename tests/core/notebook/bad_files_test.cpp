// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// What a spreadsheet, a camera or a hurry can do to a notebook.
#include <gtest/gtest.h>

#include "tests/core/notebook/notebook_bench.h"

namespace wm::notebook {
namespace {

using base::Fault;

Fault faultOf(std::string_view bytes) {
    const auto table = readTable(bytes);
    if (!table)
        return table.error().fault;
    const auto notebook = readNotebook(*table, Garage().book());
    EXPECT_FALSE(notebook);
    return notebook ? Fault::Malformed : notebook.error().fault;
}

TEST(NotebookBadFileTest, EmptyFilesAndBlanksAreEmpty) {
    EXPECT_EQ(faultOf(""), Fault::Empty);
    EXPECT_EQ(faultOf(" \r\n\r\n\t\n"), Fault::Empty);
    EXPECT_EQ(faultOf("\xEF\xBB\xBF\n"), Fault::Empty);
    EXPECT_EQ(faultOf(std::string_view("\xFF\xFE\n\0", 4)), Fault::Empty);
    EXPECT_EQ(faultOf(";;;\n;;;\n"), Fault::Empty);
}

TEST(NotebookBadFileTest, PicturesAndWorkbooksAreNoText) {
    EXPECT_EQ(faultOf(std::string_view("\x89PNG\r\n\x1A\n\0\0\0\rIHDR", 16)), Fault::NotText);
    EXPECT_EQ(faultOf(std::string_view("\xFF\xD8\xFF\xE0\0\x10JFIF\0\x01", 12)), Fault::NotText);
    EXPECT_EQ(faultOf(std::string_view("PK\x03\x04\x14\0\x06\0", 8)), Fault::NotText);
}

TEST(NotebookBadFileTest, AProseTextHasNoColumns) {
    EXPECT_EQ(faultOf("Dear diary\nToday I rode\n"), Fault::NoColumns);
}

TEST(NotebookBadFileTest, AMissingColumnIsNamed) {
    const auto missing = [](const char* text) {
        const auto notebook = readNotebook(*readTable(text), Garage().book());
        return notebook ? Fault::Unknown : notebook.error().fault;
    };
    EXPECT_EQ(missing("machine;hours\nHeron 250;1,0\nHeron 250;1,2\n"), Fault::NoDates);
    EXPECT_EQ(missing("date;hours\n07.03.2026;1,0\n08.03.2026;1,2\n"), Fault::NoMachine);
    EXPECT_EQ(missing("date;machine;colour\n07.03.2026;Heron 250;red\n08.03.2026;Heron 250;blue\n"),
              Fault::NoFigures);
}

TEST(NotebookBadFileTest, FormulaCellsAreRefusedByTheLine) {
    const Notebook notebook = Garage().read(
        "date;machine;hours;meter\n07.03.2026;Heron 250;1,0;14,5\n08.03.2026;Heron 250;=C2+1;15,7\n"
        "09.03.2026;Heron 250;1,0;#REF!\n14.03.2026;Heron 250;1,0;18,0\nTotal;;=SUM(C2:C4);\n");
    EXPECT_EQ(lineOf(notebook, 2).verdict, Verdict::Taken);
    EXPECT_TRUE(lineOf(notebook, 3).has(Defect::Formula));
    EXPECT_TRUE(lineOf(notebook, 4).has(Defect::Formula));
    EXPECT_EQ(lineOf(notebook, 5).verdict, Verdict::Taken);
    EXPECT_TRUE(lineOf(notebook, 6).has(Defect::Total));
}

TEST(NotebookBadFileTest, AFormulaInANoteIsOnlyText) {
    const Notebook notebook =
        Garage().read("date;machine;hours;note\n07.03.2026;Heron 250;1,0;=cmd|'/c calc'!A1\n");
    EXPECT_EQ(lineOf(notebook, 2).verdict, Verdict::Taken);
    EXPECT_EQ(lineOf(notebook, 2).facts.note, "=cmd|'/c calc'!A1");
}

TEST(NotebookBadFileTest, AnOpenQuoteSwallowsOneCellAtMost) {
    const Notebook notebook = Garage().read(
        "date;machine;hours;note\n07.03.2026;Heron 250;1,0;\"broke a lever\n08.03.2026;Heron 250;1,2;\n");
    ASSERT_EQ(notebook.lines.size(), 2U);
    EXPECT_EQ(lineOf(notebook, 3).facts.hours, units::Hours{120});
}

TEST(NotebookBadFileTest, QuotedLineBreaksCountAsLines) {
    const Notebook notebook = Garage().read(
        "date;machine;hours;note\r\n07.03.2026;Heron 250;1,0;\"wet\r\nand cold\"\r\n08.03.2026;Heron "
        "250;1,2;\r\n");
    EXPECT_EQ(lineOf(notebook, 2).facts.note, "wet\nand cold");
    EXPECT_EQ(lineOf(notebook, 4).facts.hours, units::Hours{120});
}

TEST(NotebookBadFileTest, ReadingCanBeStopped) {
    std::string text = "date;machine;hours\n";
    for (int line = 0; line < 5'000; ++line)
        text += "07.03.2026;Heron 250;1,0\n";
    const auto table = readTable(text, [](std::size_t, std::size_t) { return false; });
    ASSERT_FALSE(table);
    EXPECT_EQ(table.error(), (base::Error{Fault::Stopped, "notebook", {}, {}}));
}

// Each figure by hand; a spreadsheet's day 46088 is 2026-03-07 (45000 is 2023-03-15, as spreadsheets show
// it).
TEST(NotebookFiguresTest, DatesInManyForms) {
    const auto read = [](std::string_view cell, DateForm form = DateForm::DayFirst) {
        const auto date = readDate(cell, form, 2026);
        return date ? date->date.iso() : std::string("none");
    };
    for (const char* cell :
         {"07.03.2026", "7.3.26", "7/3/2026", "2026-03-07", "2026/3/7", "20260307", "46088", "Sat 07.03.2026",
          "Sa, 7.3.2026", "2026-03-07 00:00:00", "2026-03-07T10:30", "7 March 2026", "7. März 2026",
          "7 mars 2026", "March 7, 2026", "7 Mar", "07.03."})
        EXPECT_EQ(read(cell), "2026-03-07") << cell;
    EXPECT_EQ(read("3/7/2026", DateForm::MonthFirst), "2026-03-07");
    EXPECT_EQ(read("45000"), "2023-03-15");
    for (const char* cell : {"", "soon", "1,5", "1.5", "31.02.2026", "14.5", "7 Marvels 20266", "99.99.9999"})
        EXPECT_EQ(read(cell), "none") << cell;
}

TEST(NotebookFiguresTest, HoursInManyForms) {
    const auto read = [](std::string_view cell, char decimal = ',') {
        const auto hours = readHours(cell, decimal);
        return hours ? hours->hours.count() : -1;
    };
    for (const char* cell : {"1,5", "1.5", "1,50", "1:30", "01:30:00", "1h30", "1 h 30 min", "90 min", "90'",
                             "1,5 h", "1,5h", "1,5 Std", "ca. 1,5", "+1,5"})
        EXPECT_EQ(read(cell), 150) << cell;
    EXPECT_EQ(read("1.234,5"), 123'450);
    EXPECT_EQ(read("1'234.5", '.'), 123'450);
    for (const char* cell : {"", "abc", "1,5,5", "1:99", "--", "h", "1e3"})
        EXPECT_EQ(read(cell), -1) << cell;
}

TEST(NotebookFiguresTest, UsedPartsInManyForms) {
    const auto one = [](std::string_view cell) {
        const auto used = readUsed(cell, ',');
        return used && used->size() == 1 ? used->front() : UsedPart{};
    };
    using upkeep::Unit;
    EXPECT_EQ(one("engine oil 1,0 l"), (UsedPart{"engine oil", 1000, Unit::Millilitre}));
    EXPECT_EQ(one("0,7l fork oil"), (UsedPart{"fork oil", 700, Unit::Millilitre}));
    EXPECT_EQ(one("2x spark plug"), (UsedPart{"spark plug", 2, Unit::Piece}));
    EXPECT_EQ(one("brake fluid 4 60 ml"), (UsedPart{"brake fluid 4", 60, Unit::Millilitre}));
    EXPECT_EQ(one("clutch plates 8"), (UsedPart{"clutch plates", 8, Unit::Piece}));
    EXPECT_EQ(one("tube"), (UsedPart{"tube", 1, Unit::Piece}));
    EXPECT_EQ(one("engine oil 1000 l"), (UsedPart{"engine oil", 1000, Unit::Millilitre, true}));
    EXPECT_EQ(readUsed("oil 1,0 l, filter 1 + washer", ',')->size(), 3U);
    EXPECT_FALSE(readUsed("oil 0,7", ','));
}

}  // namespace
}  // namespace wm::notebook
