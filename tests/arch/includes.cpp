// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/arch/includes.h"

#include <algorithm>
#include <functional>
#include <sstream>

namespace wm::arch {

namespace {

using Arrows = std::map<Arrow, int>;

std::string folderOf(const std::string& path) {
    return path.substr(0, path.rfind('/'));
}

// The arrows of one circle, or none if there is no circle.
std::vector<Arrow> circleIn(const Arrows& arrows) {
    std::vector<std::string> way;
    std::set<std::string> done;
    std::vector<Arrow> circle;
    const std::function<bool(const std::string&)> walk = [&](const std::string& at) {
        if (const auto seen = std::find(way.begin(), way.end(), at); seen != way.end()) {
            for (auto from = seen; from != way.end(); ++from)
                circle.emplace_back(*from, from + 1 == way.end() ? at : *(from + 1));
            return true;
        }
        if (!done.insert(at).second)
            return false;
        way.push_back(at);
        for (const auto& [arrow, count] : arrows)
            if (arrow.first == at && walk(arrow.second))
                return true;
        way.pop_back();
        return false;
    };
    for (const auto& [arrow, count] : arrows)
        if (walk(arrow.first))
            break;
    return circle;
}

// The arrows that point down once those that close a circle are taken away.
Arrows downOf(const Arrows& all, std::set<Arrow>& up) {
    Arrows down = all;
    for (auto circle = circleIn(down); !circle.empty(); circle = circleIn(down)) {
        const auto lightest = std::min_element(
            circle.begin(), circle.end(),
            [&](const Arrow& one, const Arrow& other) { return down.at(one) < down.at(other); });
        down.erase(*lightest);
        up.insert(*lightest);
    }
    return down;
}

// The longest way down from `from`, in steps.
std::size_t heightOf(const std::string& from, const Arrows& down, std::map<std::string, std::size_t>& known) {
    if (const auto height = known.find(from); height != known.end())
        return height->second;
    std::size_t height = 0;
    for (const auto& [arrow, count] : down)
        if (arrow.first == from)
            height = std::max(height, heightOf(arrow.second, down, known) + 1);
    return known[from] = height;
}

}  // namespace

bool Includes::isImplied(const Arrow& arrow) const {
    std::set<std::string> seen;
    const std::function<bool(const std::string&, bool)> reaches = [&](const std::string& at, bool first) {
        if (at == arrow.second)
            return true;
        if (!seen.insert(at).second)
            return false;
        return std::any_of(arrows.begin(), arrows.end(), [&](const auto& each) {
            return each.first.first == at && !up.contains(each.first) && !(first && each.first == arrow) &&
                   reaches(each.first.second, false);
        });
    };
    return reaches(arrow.first, true);
}

Includes includesOf(const std::vector<SourceFile>& files) {
    Includes all;
    std::map<std::string, Folder> folders;
    for (const SourceFile& file : files) {
        const std::string from = folderOf(file.path);
        Folder& folder = folders[from];
        folder.name = from;
        folder.files += 1;
        folder.lines += file.lines.size();
        for (const std::string& included : ownIncludes(file))
            if (const std::string to = folderOf(included); to != from && included != to)
                all.arrows[{from, to}] += 1;
    }
    const Arrows down = downOf(all.arrows, all.up);
    std::map<std::string, std::size_t> heights;
    for (auto& [name, folder] : folders) {
        folder.height = heightOf(name, down, heights);
        all.folders.push_back(folder);
    }
    std::stable_sort(all.folders.begin(), all.folders.end(),
                     [](const Folder& one, const Folder& other) { return one.height > other.height; });
    return all;
}

std::string dotOf(const Includes& includes) {
    std::ostringstream out;
    out << "digraph includes {\n  node [shape=box fontname=\"sans-serif\"];\n";
    for (const Folder& folder : includes.folders)
        out << "  \"" << folder.name << "\" [label=\"" << folder.name << "\\n"
            << folder.lines << " lines\"];\n";
    for (const auto& [arrow, count] : includes.arrows)
        out << "  \"" << arrow.first << "\" -> \"" << arrow.second << "\" [label=" << count
            << (includes.up.contains(arrow) ? " color=red constraint=false"
                : includes.isImplied(arrow) ? " color=gray"
                                            : "")
            << "];\n";
    out << "}\n";
    return out.str();
}

}  // namespace wm::arch
