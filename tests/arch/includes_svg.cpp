// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include <algorithm>
#include <cmath>
#include <functional>
#include <sstream>

#include "tests/arch/includes.h"

namespace wm::arch {

namespace {

constexpr double kWidth = 1900;
constexpr double kBoxWidth = 172;
constexpr double kBoxHeight = 40;
constexpr double kStorey = 104;
constexpr double kMargin = 20;
constexpr double kCell = 26;
constexpr double kNames = 170;

constexpr auto kInk = "#222";
constexpr auto kPale = "#c9c9c9";
constexpr auto kUp = "#d00000";

struct Spot {
    double x = 0;  ///< of the box's middle
    double y = 0;  ///< of its upper edge
};
using Spots = std::map<std::string, Spot>;

// Boxes of one height side by side, each near the middle of those above that include it.
Spots spotsOf(const Includes& includes) {
    std::map<std::size_t, std::vector<std::string>, std::greater<>> storeys;
    for (const Folder& folder : includes.folders)
        storeys[folder.height].push_back(folder.name);
    Spots spots;
    double y = kMargin;
    for (auto& [height, names] : storeys) {
        std::map<std::string, double> pull;
        for (const std::string& name : names) {
            double sum = 0;
            double weight = 0;
            for (const auto& [arrow, count] : includes.arrows)
                if (arrow.second == name && spots.contains(arrow.first)) {
                    sum += count * spots.at(arrow.first).x;
                    weight += count;
                }
            pull[name] = weight > 0 ? sum / weight : kWidth / 2;
        }
        std::stable_sort(names.begin(), names.end(),
                         [&](const auto& one, const auto& other) { return pull[one] < pull[other]; });
        const double room = (kWidth - 2 * kMargin) / static_cast<double>(names.size());
        // A storey of one or two would stand in line with those around it, and hide their arrows.
        const double aside = height % 2 == 0 && names.size() < 3 ? room / 5 : 0;
        for (std::size_t at = 0; at < names.size(); ++at)
            spots[names[at]] = {kMargin + room * (static_cast<double>(at) + 0.5) + aside, y};
        y += kStorey;
    }
    return spots;
}

struct Type {
    const char* anchor = "middle";
    int size = 12;
    const char* colour = kInk;
    const char* more = "";
};

template <class Words>
void say(std::ostringstream& out, double x, double y, const Words& words, const Type& type = {}) {
    out << "<text x=\"" << x << "\" y=\"" << y << "\" text-anchor=\"" << type.anchor << "\" font-size=\""
        << type.size << "\" fill=\"" << type.colour << "\" " << type.more << '>' << words << "</text>\n";
}

// A count of 0 is not said.
void drawArrow(std::ostringstream& out, const Spot& from, const Spot& to, const char* colour, int count) {
    const double down = to.y > from.y ? 1 : -1;
    const double y1 = down > 0 ? from.y + kBoxHeight : from.y;
    const double y2 = down > 0 ? to.y : to.y + kBoxHeight;
    const double bend = down * std::max(30.0, std::abs(y2 - y1) / 2);
    out << "<path d=\"M" << from.x << ' ' << y1 << " C" << from.x << ' ' << y1 + bend << ' ' << to.x << ' '
        << y2 - bend << ' ' << to.x << ' ' << y2 << "\" fill=\"none\" stroke=\"" << colour
        << "\" stroke-width=\"" << (count > 0 ? 1.4 : 0.8) << "\"/>\n<path d=\"M" << to.x << ' ' << y2
        << " l-4 " << -8 * down << " h8 z\" fill=\"" << colour << "\"/>\n";
    if (count == 0)
        return;
    const double x = (from.x + to.x) / 2;
    const double y = (y1 + y2) / 2;
    const double half = count > 99 ? 12 : 9;
    out << "<rect x=\"" << x - half << "\" y=\"" << y - 8 << "\" width=\"" << 2 * half
        << "\" height=\"16\" fill=\"#fff\"/>\n";
    say(out, x, y + 4, count, {.colour = colour});
}

void drawArrows(std::ostringstream& out, const Includes& includes, const Spots& spots) {
    const auto draw = [&](bool implied) {
        for (const auto& [arrow, count] : includes.arrows) {
            const bool isUp = includes.up.contains(arrow);
            if (!spots.contains(arrow.second) || implied != (!isUp && includes.isImplied(arrow)))
                continue;
            drawArrow(out, spots.at(arrow.first), spots.at(arrow.second),
                      isUp ? kUp : (implied ? kPale : kInk), implied ? 0 : count);
        }
    };
    draw(true);
    draw(false);
}

void drawBoxes(std::ostringstream& out, const Includes& includes, const Spots& spots) {
    for (const Folder& folder : includes.folders) {
        const Spot& spot = spots.at(folder.name);
        out << "<rect x=\"" << spot.x - kBoxWidth / 2 << "\" y=\"" << spot.y << "\" width=\"" << kBoxWidth
            << "\" height=\"" << kBoxHeight << "\" rx=\"4\" fill=\"#fff\" stroke=\"" << kInk << "\"/>\n";
        say(out, spot.x, spot.y + 17, folder.name, {.more = "font-weight=\"bold\""});
        say(out, spot.x, spot.y + 32,
            std::to_string(folder.files) + " files, " + std::to_string(folder.lines) + " lines",
            {.size = 11});
    }
}

// A line a folder and a column a folder, from the highest to the lowest: what stands left of the diagonal
// points up.
void drawTable(std::ostringstream& out, const Includes& includes, double top) {
    const auto& folders = includes.folders;
    for (std::size_t row = 0; row < folders.size(); ++row) {
        const double y = top + kNames + kCell * static_cast<double>(row);
        const double across = kNames + kCell * (static_cast<double>(row) + 0.5);
        say(out, kNames - 8, y + 17, folders[row].name, {.anchor = "end"});
        out << "<g transform=\"translate(" << across + 4 << ' ' << top + kNames - 8 << ") rotate(-90)\">";
        say(out, 0, 0, folders[row].name, {.anchor = "start"});
        out << "</g>\n";
        for (std::size_t column = 0; column < folders.size(); ++column) {
            const auto count = includes.arrows.find({folders[row].name, folders[column].name});
            const bool isUp = count != includes.arrows.end() && includes.up.contains(count->first);
            out << "<rect x=\"" << kNames + kCell * static_cast<double>(column) << "\" y=\"" << y
                << "\" width=\"" << kCell << "\" height=\"" << kCell << "\" fill=\""
                << (row == column ? "#ddd" : (isUp ? "#ffd0d0" : "#fff")) << "\" stroke=\"#e4e4e4\"/>\n";
            if (count != includes.arrows.end())
                say(out, kNames + kCell * (static_cast<double>(column) + 0.5), y + 17, count->second,
                    {.size = 11, .colour = isUp ? kUp : kInk});
        }
    }
}

}  // namespace

std::string svgOf(const Includes& includes) {
    const Spots spots = spotsOf(includes);
    double top = 0;
    for (const auto& [name, spot] : spots)
        top = std::max(top, spot.y + kStorey);
    const double height = top + kNames + kCell * static_cast<double>(includes.folders.size()) + kMargin;
    std::ostringstream out;
    out << "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" << kWidth << "\" height=\"" << height
        << "\" viewBox=\"0 0 " << kWidth << ' ' << height << "\" font-family=\"sans-serif\">\n<rect width=\""
        << kWidth << "\" height=\"" << height << "\" fill=\"#fff\"/>\n";
    drawArrows(out, includes, spots);
    drawBoxes(out, includes, spots);
    drawTable(out, includes, top);
    out << "</svg>\n";
    return out.str();
}

}  // namespace wm::arch
