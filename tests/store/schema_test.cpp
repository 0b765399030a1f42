// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "core/store/schema.h"

#include <set>

#include "core/base/names.h"
#include "core/store/migration.h"
#include "core/store/row_shape.h"
#include "tests/store/sample.h"

namespace wm::store {
namespace {

using sample::Folder;

class SchemaTest : public testing::Test {
  protected:
    void SetUp() override {
        const Connection connection(path_, Connection::Mode::Creating, Options{});
        layOut(connection, currentSchema());
    }
    std::string ask(const std::string& sql) const { return sample::answer(path_, sql); }
    std::string columnsInFile(const std::string& table) const {
        return ask("SELECT group_concat(name) FROM pragma_table_info('" + table + "')");
    }
    std::string tableSql(const std::string& table) const {
        return ask("SELECT sql FROM sqlite_schema WHERE type = 'table' AND name = '" + table + "'");
    }

    Folder folder_;
    QString path_ = folder_.path("schema.wm");
};

std::string joined(const std::vector<std::string>& names) {
    std::string list;
    for (const std::string& name : names)
        list += (list.empty() ? "" : ",") + name;
    return list;
}

TEST_F(SchemaTest, HasAColumnForEachFieldAndNoOther) {
    eachRowType([this](auto row) {
        using R = decltype(row);
        EXPECT_EQ(columnsInFile(std::string(R::kTable)), joined(columnsOf<R>()));
        R::fields(row, [&](std::string_view name, auto& member) {
            using Member = std::decay_t<decltype(member)>;
            if constexpr (kIsChildren<Member>) {
                EXPECT_EQ(columnsInFile(childTable<R>(name)),
                          "owner,position," + joined(columnsOf<typename Member::value_type>()));
            }
        });
    });
}

template <class T>
struct Bare {
    using Type = T;
};
template <class T>
struct Bare<std::optional<T>> {
    using Type = T;
};

// The words of each enumeration stand in the CHECK of its column, and no others.
template <class R>
void expectWords(const std::string& table, const std::string& sql) {
    R row{};
    R::fields(row, [&](std::string_view name, auto& member) {
        using Type = typename Bare<std::decay_t<decltype(member)>>::Type;
        if constexpr (base::Named<Type>) {
            std::string list;
            for (const std::string_view word : base::Names<Type>::names)
                list += (list.empty() ? "'" : ", '") + std::string(word) + "'";
            EXPECT_NE(sql.find("CHECK (" + std::string(name) + " IN (" + list + "))"), std::string::npos)
                << table << "." << name;
        }
    });
}

TEST_F(SchemaTest, KnowsTheWordsOfEveryEnumeration) {
    eachRowType([this](auto row) {
        using R = decltype(row);
        const std::string table(R::kTable);
        expectWords<R>(table, tableSql(table));
        R::fields(row, [&](std::string_view name, auto& member) {
            using Member = std::decay_t<decltype(member)>;
            if constexpr (kIsChildren<Member>)
                expectWords<typename Member::value_type>(childTable<R>(name), tableSql(childTable<R>(name)));
        });
    });
}

// Dates, flags and ids: each column of such a type is guarded by the CHECK of its kind.
TEST_F(SchemaTest, GuardsDatesAndFlags) {
    eachRowType([this](auto row) {
        using R = decltype(row);
        const std::string sql = tableSql(std::string(R::kTable));
        R::fields(row, [&](std::string_view field, auto& member) {
            using Type = typename Bare<std::decay_t<decltype(member)>>::Type;
            const std::string name(field);
            std::string guard;
            if constexpr (std::is_same_v<Type, calendar::Date>)
                guard = "CHECK (date(" + name + ") IS " + name;
            else if constexpr (std::is_same_v<Type, bool>)
                guard = "CHECK (" + name + " IN (0, 1))";
            EXPECT_NE(sql.find(guard), std::string::npos) << R::kTable << "." << name;
        });
    });
}

TEST_F(SchemaTest, AllowsNothingExactlyWhereAFieldIsOptional) {
    eachRowType([this](auto row) {
        using R = decltype(row);
        R::fields(row, [&](std::string_view name, auto& member) {
            using Member = std::decay_t<decltype(member)>;
            if constexpr (!kIsChildren<Member>) {
                const bool isOptional = !std::is_same_v<typename Bare<Member>::Type, Member>;
                const std::string notNull =
                    ask("SELECT \"notnull\" OR pk FROM pragma_table_info('" + std::string(R::kTable) +
                        "') WHERE name = '" + std::string(name) + "'");
                EXPECT_EQ(notNull, isOptional ? "0" : "1") << R::kTable << "." << name;
            }
        });
    });
}

TEST_F(SchemaTest, IsStrictThroughout) {
    EXPECT_EQ(ask("SELECT group_concat(name) FROM pragma_table_list WHERE schema = 'main' AND type = 'table' "
                  "AND strict = 0 AND name NOT LIKE 'sqlite_%'"),
              "NULL");
}

TEST_F(SchemaTest, MarksTheFileAsOurs) {
    EXPECT_EQ(ask("PRAGMA application_id"), std::to_string(kApplicationId));
    EXPECT_EQ(ask("PRAGMA user_version"), "9");
    EXPECT_EQ(ask("SELECT oldest_reader || needs_program FROM file_state"), "90.9");
}

TEST_F(SchemaTest, NumbersItsSteps) {
    int expected = 1;
    for (const SchemaStep& step : currentSchema()) {
        EXPECT_EQ(step.version, expected++);
        EXPECT_GE(step.oldestReader, 1);
        EXPECT_LE(step.oldestReader, step.version);
        EXPECT_FALSE(step.description.empty());
        EXPECT_FALSE(step.program.empty());
    }
}

TEST_F(SchemaTest, ListsEveryTableThatAVerbCanChange) {
    const std::vector<std::string> listed = factTables();
    const std::set<std::string> tables(listed.begin(), listed.end());
    EXPECT_EQ(tables.size(), listed.size());
    EXPECT_EQ(
        ask("SELECT count(*) FROM pragma_table_list WHERE schema = 'main' AND type = 'table' AND name NOT "
            "LIKE 'sqlite_%' AND name NOT IN ('file_state', 'verb_log', 'undo_change', 'row_seal')"),
        std::to_string(tables.size()));
}

}  // namespace
}  // namespace wm::store
