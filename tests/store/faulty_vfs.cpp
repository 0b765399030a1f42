// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/store/faulty_vfs.h"

#include <algorithm>
#include <cstring>
#include <fstream>
#include <iterator>
#include <new>

namespace wm::store::sample {

namespace {
constexpr std::int64_t kSector = 512;
}

// What SQLite holds for an open file: ours first, the system's right behind it.
struct FaultyVfs::OpenFile {
    sqlite3_file base;
    FaultyVfs* vfs;
    Image* image;  ///< null if the writes go straight through
    std::string* path;
    [[nodiscard]] sqlite3_file* real() { return reinterpret_cast<sqlite3_file*>(this + 1); }
};

// The calls by which SQLite reaches us.
struct FaultyVfs::Methods {
    static OpenFile* of(sqlite3_file* file) { return reinterpret_cast<OpenFile*>(file); }
    static FaultyVfs* of(sqlite3_vfs* vfs) { return static_cast<FaultyVfs*>(vfs->pAppData); }

    static int close(sqlite3_file* file) {
        delete of(file)->path;
        return of(file)->real()->pMethods->xClose(of(file)->real());
    }

    static int read(sqlite3_file* file, void* into, int size, sqlite3_int64 at) {
        OpenFile* f = of(file);
        if (const int code = f->vfs->answerTo(Call::Read, *f->path); code != SQLITE_OK)
            return code;
        if (f->image == nullptr)
            return f->real()->pMethods->xRead(f->real(), into, size, at);
        std::memset(into, 0, static_cast<std::size_t>(size));
        const std::vector<char>& seen = f->image->seen;
        const std::int64_t there =
            std::clamp<std::int64_t>(static_cast<std::int64_t>(seen.size()) - at, 0, size);
        if (there > 0)
            std::memcpy(into, seen.data() + at, static_cast<std::size_t>(there));
        return there == size ? SQLITE_OK : SQLITE_IOERR_SHORT_READ;
    }

    static int write(sqlite3_file* file, const void* from, int size, sqlite3_int64 at) {
        OpenFile* f = of(file);
        if (const int code = f->vfs->change(Call::Write, *f->path); code != SQLITE_OK)
            return code;
        if (f->image == nullptr)
            return f->real()->pMethods->xWrite(f->real(), from, size, at);
        const auto* bytes = static_cast<const char*>(from);
        f->image->unsynced.push_back({false, at, {bytes, bytes + size}});
        apply(f->image->unsynced.back(), f->image->seen);
        return SQLITE_OK;
    }

    static int truncate(sqlite3_file* file, sqlite3_int64 size) {
        OpenFile* f = of(file);
        if (const int code = f->vfs->change(Call::Truncate, *f->path); code != SQLITE_OK)
            return code;
        if (f->image == nullptr)
            return f->real()->pMethods->xTruncate(f->real(), size);
        f->image->unsynced.push_back({true, size, {}});
        apply(f->image->unsynced.back(), f->image->seen);
        return SQLITE_OK;
    }

    static int sync(sqlite3_file* file, int flags) {
        OpenFile* f = of(file);
        if (const int code = f->vfs->change(Call::Sync, *f->path); code != SQLITE_OK)
            return code;
        if (f->image == nullptr)
            return f->real()->pMethods->xSync(f->real(), flags);
        store(*f->path, f->image->seen);
        f->image->unsynced.clear();
        return SQLITE_OK;
    }

    static int fileSize(sqlite3_file* file, sqlite3_int64* size) {
        OpenFile* f = of(file);
        if (f->image == nullptr)
            return f->real()->pMethods->xFileSize(f->real(), size);
        *size = static_cast<sqlite3_int64>(f->image->seen.size());
        return SQLITE_OK;
    }

    static int lock(sqlite3_file* file, int level) {
        return of(file)->real()->pMethods->xLock(of(file)->real(), level);
    }
    static int unlock(sqlite3_file* file, int level) {
        return of(file)->real()->pMethods->xUnlock(of(file)->real(), level);
    }
    static int checkReserved(sqlite3_file* file, int* result) {
        return of(file)->real()->pMethods->xCheckReservedLock(of(file)->real(), result);
    }
    static int control(sqlite3_file*, int, void*) { return SQLITE_NOTFOUND; }
    static int sectorSize(sqlite3_file*) { return 4096; }
    // The disc promises nothing: no write is atomic, none spares its neighbours, none keeps its order.
    static int characteristics(sqlite3_file*) { return 0; }

    static int open(sqlite3_vfs* vfs, sqlite3_filename path, sqlite3_file* file, int flags, int* outFlags) {
        FaultyVfs* self = of(vfs);
        OpenFile* f = of(file);
        f->base.pMethods = nullptr;
        const std::string name = path == nullptr ? "" : path;
        if (const int code = self->answerTo(Call::Open, name); code != SQLITE_OK)
            return code;
        const int code = self->real_->xOpen(self->real_, path, f->real(), flags, outFlags);
        if (code != SQLITE_OK)
            return code;
        static const sqlite3_io_methods kMethods = {
            1,       close,         read,    write,      truncate,        sync,    fileSize, lock,
            unlock,  checkReserved, control, sectorSize, characteristics, nullptr, nullptr,  nullptr,
            nullptr, nullptr,       nullptr};
        f->vfs = self;
        f->path = new std::string(name);
        const bool lasts = (flags & (SQLITE_OPEN_MAIN_DB | SQLITE_OPEN_MAIN_JOURNAL)) != 0;
        f->image = self->holds_ && lasts ? &self->imageOf(name) : nullptr;
        f->base.pMethods = &kMethods;
        return SQLITE_OK;
    }
};

FaultyVfs::FaultyVfs(std::string name) : name_(std::move(name)), real_(sqlite3_vfs_find(nullptr)) {
    vfs_ = *real_;
    vfs_.szOsFile = static_cast<int>(sizeof(OpenFile)) + real_->szOsFile;
    vfs_.zName = name_.c_str();
    vfs_.pNext = nullptr;
    vfs_.xOpen = Methods::open;
    // The system's layer finds its own way through pAppData; what we leave to it is called with its own vfs.
    vfs_.pAppData = this;
    vfs_.xDelete = [](sqlite3_vfs* vfs, const char* path, int syncDir) {
        FaultyVfs* self = Methods::of(vfs);
        if (self->isOff_)
            return SQLITE_IOERR_DELETE;
        self->images_.erase(path);
        return self->real_->xDelete(self->real_, path, syncDir);
    };
    vfs_.xAccess = [](sqlite3_vfs* vfs, const char* path, int flags, int* result) {
        return Methods::of(vfs)->real_->xAccess(Methods::of(vfs)->real_, path, flags, result);
    };
    vfs_.xFullPathname = [](sqlite3_vfs* vfs, const char* path, int size, char* into) {
        return Methods::of(vfs)->real_->xFullPathname(Methods::of(vfs)->real_, path, size, into);
    };
    sqlite3_vfs_register(&vfs_, 0);
}

FaultyVfs::~FaultyVfs() {
    sqlite3_vfs_unregister(&vfs_);
}

void FaultyVfs::fail(Call call, int nth, int code, bool onwards, std::string suffix) {
    failing_ = call;
    failAt_ = nth;
    failCode_ = code;
    failOnwards_ = onwards;
    suffix_ = std::move(suffix);
    hasFailed_ = false;
}

void FaultyVfs::failNothing() {
    failing_ = Call::kCount;
}

void FaultyVfs::cutAt(int nth) {
    cutAt_ = changes_ + nth;
}

int FaultyVfs::answerTo(Call call, const std::string& path) {
    if (isOff_)
        return SQLITE_IOERR;
    if (call != failing_ || !path.ends_with(suffix_))
        return SQLITE_OK;
    --failAt_;
    if (failAt_ > 0 || (failAt_ < 0 && !failOnwards_))
        return SQLITE_OK;
    hasFailed_ = true;
    return failCode_;
}

int FaultyVfs::change(Call call, const std::string& path) {
    if (!isOff_ && ++changes_ >= cutAt_)
        isOff_ = true;
    return answerTo(call, path);
}

FaultyVfs::Image& FaultyVfs::imageOf(const std::string& path) {
    auto& image = images_[path];
    if (image == nullptr)
        image = std::make_unique<Image>(Image{contentOf(path), {}});
    return *image;
}

void FaultyVfs::apply(const Write& write, std::vector<char>& to) {
    const auto at = static_cast<std::size_t>(write.at);
    if (write.isTruncation) {
        to.resize(std::min(to.size(), at));
        return;
    }
    to.resize(std::max(to.size(), at + write.bytes.size()));
    std::copy(write.bytes.begin(), write.bytes.end(), to.begin() + write.at);
}

void FaultyVfs::settle(std::mt19937& chance) {
    std::bernoulli_distribution lands(std::uniform_real_distribution(0.0, 1.0)(chance));
    for (auto& [path, image] : images_) {
        if (image->unsynced.empty())
            continue;
        std::vector<char> disc = contentOf(path);
        for (const Write& write : image->unsynced) {
            if (write.isTruncation) {
                if (lands(chance))
                    apply(write, disc);
                continue;
            }
            const auto size = static_cast<std::int64_t>(write.bytes.size());
            for (std::int64_t from = 0; from < size;) {
                const std::int64_t sectorEnd = (write.at + from) / kSector * kSector + kSector - write.at;
                const std::int64_t to = std::min(size, sectorEnd);
                if (lands(chance))
                    apply({false, write.at + from, {write.bytes.begin() + from, write.bytes.begin() + to}},
                          disc);
                from = to;
            }
        }
        store(path, disc);
    }
    images_.clear();
}

std::vector<char> FaultyVfs::contentOf(const std::string& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), std::istreambuf_iterator<char>()};
}

// Written in place, so that the open handle of the system's layer stays on the same file.
void FaultyVfs::store(const std::string& path, const std::vector<char>& content) {
    std::ofstream file(path, std::ios::binary | std::ios::trunc);
    file.write(content.data(), static_cast<std::streamsize>(content.size()));
}

}  // namespace wm::store::sample
