// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "ui/print/pdf_words.h"

#include "ui/words/tr.h"

namespace wm::ui {

namespace {}  // namespace

QString wordsFor(const PdfResult& result) {
    switch (result.outcome) {
        case PdfOutcome::Written:
            return {};
        case PdfOutcome::NoName:
            return tr("The job sheet needs a file name to be saved under.");
        case PdfOutcome::IsFolder:
            return tr("%1 is a folder; give a file name in it.").arg(result.path);
        case PdfOutcome::FolderMissing:
            return tr("The folder for %1 is not there; make it, or choose another.").arg(result.path);
        case PdfOutcome::NotAllowed:
            return result.detail.isEmpty()
                       ? tr("%1 can't be written there; choose a folder of your own.").arg(result.path)
                       : tr("%1 can't be written there (%2); choose another place.")
                             .arg(result.path, result.detail);
        case PdfOutcome::NotWritten:
            break;
    }
    return tr("The job sheet did not fit on the disk; free some space and save %1 again.").arg(result.path);
}

}  // namespace wm::ui
