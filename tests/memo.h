// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <chrono>
#include <cstdint>
#include <filesystem>
#include <fstream>
#include <optional>
#include <random>
#include <sstream>
#include <string>
#include <string_view>
#include <system_error>

namespace wm::test {

/// A text that is dear to make and kept between processes, as ctest runs each test in one of its own. It is
/// found again only by the very program that made it, from the same `madeOf`: a program that was linked anew
/// makes its own.
class Memo {
  public:
    Memo(const std::string& name, std::string_view madeOf) {
        namespace fs = std::filesystem;
        std::error_code failed;
        const fs::path program = fs::read_symlink("/proc/self/exe", failed);
        if (failed)
            return;
        const auto linked = fs::last_write_time(program, failed).time_since_epoch().count();
        const fs::path folder = fs::temp_directory_path(failed) / "witnessmark-tests";
        fs::create_directories(folder, failed);
        if (failed)
            return;
        std::uint64_t hash = kBasis;
        add(hash, program.string() + ' ' + std::to_string(linked) + ' ');
        add(hash, madeOf);
        path_ = folder / (name + '-' + std::to_string(hash));
        clear(folder, name + '-');
    }

    [[nodiscard]] std::optional<std::string> text() const {
        std::ifstream in(path_, std::ios::binary);
        if (path_.empty() || !in)
            return std::nullopt;
        std::stringstream text;
        text << in.rdbuf();
        return text.str();
    }

    /// Whole or not at all: another process may be looking.
    void keep(std::string_view text) const {
        if (path_.empty())
            return;
        const std::filesystem::path half = path_.string() + '-' + std::to_string(std::random_device{}());
        std::error_code failed;
        {
            std::ofstream out(half, std::ios::binary);
            out << text;
            if (!out.flush()) {
                out.close();
                std::filesystem::remove(half, failed);
                return;
            }
        }
        std::filesystem::rename(half, path_, failed);
    }

  private:
    // What programs of yesterday made nobody finds again.
    static void clear(const std::filesystem::path& folder, std::string_view prefix) {
        namespace fs = std::filesystem;
        std::error_code failed;
        for (fs::directory_iterator at(folder, failed); !failed && at != fs::directory_iterator{};
             at.increment(failed)) {
            std::error_code gone;
            const bool isOld = fs::file_time_type::clock::now() - fs::last_write_time(*at, gone) > kDay;
            if (!gone && isOld && at->path().filename().string().starts_with(prefix))
                fs::remove(*at, gone);
        }
    }

    static constexpr std::chrono::hours kDay{24};
    // FNV-1a, 64 bits (Fowler, Noll, Vo).
    static constexpr std::uint64_t kBasis = 0xCBF29CE484222325U;
    static constexpr std::uint64_t kPrime = 0x100000001B3U;
    static void add(std::uint64_t& hash, std::string_view text) {
        for (const char c : text) {
            hash ^= static_cast<unsigned char>(c);
            hash *= kPrime;
        }
    }

    std::filesystem::path path_;
};

}  // namespace wm::test
