// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// The search line against two peers on the same rows in one run: a plain edit-distance scan and SQLite's FTS5
// with trigrams. Each is asked every beginning of every query of tests/data/lookup/queries.json, as somebody
// types it. The counters name the share of whole queries whose point came first.
#include <benchmark/benchmark.h>
#include <sqlite3.h>

#include <algorithm>
#include <ctime>

#include "core/base/text.h"
#include "core/book/stand_figures.h"
#include "core/fastening/lookup.h"
#include "tests/core/fastening/stand.h"

namespace {

using namespace wm;
using fastening::Figure;

constexpr int kMachines = 9;
constexpr std::size_t kShown = 30;

const std::vector<Figure>& figures() {
    static const std::vector<Figure> all = book::figuresOf(fastening::standBook(kMachines), std::nullopt);
    return all;
}

// What a row says, for the peers: the same words that the lookup reads.
std::string rowText(const Figure& figure) {
    return base::lowered(figure.name + ' ' + figure.about + ' ' + figure.thread + ' ' + figure.machineName);
}

const std::vector<std::string>& rows() {
    static const std::vector<std::string> all = [] {
        std::vector<std::string> texts;
        for (const Figure& figure : figures())
            texts.push_back(rowText(figure));
        return texts;
    }();
    return all;
}

class Ours {
  public:
    std::vector<std::size_t> find(const std::string& query) const {
        std::vector<std::size_t> found;
        for (const auto& hit : lookup_.find(query, std::nullopt, kShown).hits)
            found.push_back(hit.figure);
        return found;
    }

  private:
    fastening::Lookup lookup_{figures()};
};

// The least number of edits from the query to any stretch of a row (Sellers 1980).
class EditScan {
  public:
    std::vector<std::size_t> find(const std::string& typed) const {
        const std::string query = base::lowered(typed);
        std::vector<std::pair<int, std::size_t>> order;
        for (std::size_t at = 0; at < rows().size(); ++at)
            order.emplace_back(distance(query, rows()[at]), at);
        const auto shown = static_cast<std::ptrdiff_t>(std::min(kShown, order.size()));
        std::partial_sort(order.begin(), order.begin() + shown, order.end());
        std::vector<std::size_t> found;
        for (auto it = order.begin(); it != order.begin() + shown; ++it)
            found.push_back(it->second);
        return found;
    }

  private:
    static int distance(const std::string& query, const std::string& row) {
        std::vector<int> last(row.size() + 1, 0);
        std::vector<int> now(row.size() + 1, 0);
        for (std::size_t i = 1; i <= query.size(); ++i) {
            now[0] = static_cast<int>(i);
            for (std::size_t j = 1; j <= row.size(); ++j)
                now[j] = std::min(
                    {last[j - 1] + (query[i - 1] == row[j - 1] ? 0 : 1), last[j] + 1, now[j - 1] + 1});
            std::swap(last, now);
        }
        return *std::min_element(last.begin(), last.end());
    }
};

// Every trigram of the query, any of them, ranked by bm25: the tolerant way to ask a trigram index.
class Trigrams {
  public:
    Trigrams() {
        sqlite3_open(":memory:", &db_);
        sqlite3_exec(db_, "CREATE VIRTUAL TABLE f USING fts5(words, tokenize='trigram')", nullptr, nullptr,
                     nullptr);
        sqlite3_stmt* insert = nullptr;
        sqlite3_prepare_v2(db_, "INSERT INTO f(rowid, words) VALUES (?, ?)", -1, &insert, nullptr);
        for (std::size_t at = 0; at < rows().size(); ++at) {
            sqlite3_bind_int64(insert, 1, static_cast<sqlite3_int64>(at) + 1);
            sqlite3_bind_text(insert, 2, rows()[at].c_str(), -1, SQLITE_TRANSIENT);
            sqlite3_step(insert);
            sqlite3_reset(insert);
        }
        sqlite3_finalize(insert);
        sqlite3_prepare_v2(db_, "SELECT rowid FROM f WHERE f MATCH ? ORDER BY rank LIMIT 30", -1, &ask_,
                           nullptr);
    }
    Trigrams(const Trigrams&) = delete;
    Trigrams& operator=(const Trigrams&) = delete;
    ~Trigrams() {
        sqlite3_finalize(ask_);
        sqlite3_close(db_);
    }

    std::vector<std::size_t> find(const std::string& typed) const {
        const std::string query = base::lowered(typed);
        std::string match;
        for (std::size_t at = 0; at + 3 <= query.size(); ++at) {
            std::string gram = query.substr(at, 3);
            if (gram.find('"') != std::string::npos)
                continue;
            match += (match.empty() ? "\"" : " OR \"") + gram + '"';
        }
        std::vector<std::size_t> found;
        if (match.empty())
            return found;
        sqlite3_reset(ask_);
        sqlite3_bind_text(ask_, 1, match.c_str(), -1, SQLITE_TRANSIENT);
        while (sqlite3_step(ask_) == SQLITE_ROW)
            found.push_back(static_cast<std::size_t>(sqlite3_column_int64(ask_, 0) - 1));
        return found;
    }

  private:
    sqlite3* db_ = nullptr;
    sqlite3_stmt* ask_ = nullptr;
};

const std::vector<fastening::AskedFor>& asked() {
    static const auto all = fastening::askedFor();
    return all;
}

std::vector<std::string> keystrokes() {
    std::vector<std::string> typed;
    for (const auto& each : asked())
        for (std::size_t size = 1; size <= each.query.size(); ++size)
            typed.push_back(each.query.substr(0, size));
    return typed;
}

// Of the processor: what else runs on the machine stretches the time on the wall.
double processorMicroseconds() {
    timespec now{};
    clock_gettime(CLOCK_THREAD_CPUTIME_ID, &now);
    return 1e6 * static_cast<double>(now.tv_sec) + 1e-3 * static_cast<double>(now.tv_nsec);
}

template <class Finder>
void type(benchmark::State& state) {
    static const Finder finder;
    static const std::vector<std::string> typed = keystrokes();
    std::vector<double> times;
    for (auto _ : state) {
        times.clear();
        for (const std::string& text : typed) {
            const double begin = processorMicroseconds();
            benchmark::DoNotOptimize(finder.find(text));
            times.push_back(processorMicroseconds() - begin);
        }
    }
    std::sort(times.begin(), times.end());
    state.counters["rows"] = static_cast<double>(rows().size());
    state.counters["median_us"] = times[times.size() / 2];
    state.counters["p99_us"] = times[times.size() * 99 / 100];
    int right = 0;
    int mistyped = 0;
    int rightMistyped = 0;
    for (const auto& each : asked()) {
        const auto found = finder.find(each.query);
        const bool isFirst =
            !found.empty() && std::find(each.find.begin(), each.find.end(),
                                        fastening::pointName(figures()[found.front()])) != each.find.end();
        const bool isMistyped = each.kind == "typing error" || each.kind == "first letter";
        right += isFirst ? 1 : 0;
        mistyped += isMistyped ? 1 : 0;
        rightMistyped += isMistyped && isFirst ? 1 : 0;
    }
    state.counters["first_share"] = static_cast<double>(right) / static_cast<double>(asked().size());
    state.counters["first_share_mistyped"] = static_cast<double>(rightMistyped) / mistyped;
}

BENCHMARK_TEMPLATE(type, Ours)->Unit(benchmark::kMillisecond)->Iterations(3);
BENCHMARK_TEMPLATE(type, EditScan)->Unit(benchmark::kMillisecond)->Iterations(1);
BENCHMARK_TEMPLATE(type, Trigrams)->Unit(benchmark::kMillisecond)->Iterations(3);

}  // namespace
