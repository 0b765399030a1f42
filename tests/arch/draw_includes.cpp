// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
// Draws who includes whom: draw_includes TREE OUT writes OUT.svg and OUT.dot.
#include <fstream>
#include <iostream>

#include "tests/arch/includes.h"

int main(int count, char** words) {
    if (count != 3) {
        std::cerr << "Usage: draw_includes TREE OUT\n";
        return 2;
    }
    const auto includes = wm::arch::includesOf(wm::arch::sourceFiles({"core", "ui", "app"}, words[1]));
    const std::string out = words[2];
    std::ofstream svg(out + ".svg");
    svg << svgOf(includes);
    std::ofstream dot(out + ".dot");
    dot << dotOf(includes);
    if (!svg.flush() || !dot.flush()) {
        std::cerr << out << " can't be written.\n";
        return 1;
    }
    for (const wm::arch::Arrow& arrow : includes.up)
        std::cout << "up: " << arrow.first << " -> " << arrow.second << " (" << includes.arrows.at(arrow)
                  << ")\n";
}
