// SPDX-FileCopyrightText: Witnessmark contributors
// SPDX-License-Identifier: GPL-3.0-or-later
#include "tests/ui/harness/painted_text.h"

#include <QAbstractButton>
#include <QAbstractItemView>
#include <QComboBox>
#include <QFontMetricsF>
#include <QGraphicsView>
#include <QHeaderView>
#include <QLabel>
#include <QLineEdit>
#include <QMenu>
#include <QPaintEngine>
#include <QPainter>
#include <QPainterPath>
#include <QScrollBar>
#include <QTabBar>
#include <cmath>
#include <optional>

#include "tests/ui/harness/widgets.h"

namespace wm::ui {

namespace {

constexpr double kSlack = 1.5;  ///< of rounding; nobody sees that much missing
constexpr QChar kEllipsis(0x2026);

// Takes down what is written on it and forgets every stroke.
class TextEngine : public QPaintEngine {
  public:
    TextEngine() : QPaintEngine(AllFeatures) {}
    [[nodiscard]] Type type() const override { return User; }
    bool begin(QPaintDevice*) override {
        transform_ = {};
        clip_.reset();
        isClipping_ = true;
        return true;
    }
    bool end() override { return true; }
    void updateState(const QPaintEngineState& now) override {
        const auto flags = now.state();
        if (flags.testFlag(DirtyTransform))
            transform_ = now.transform();
        if (flags.testFlag(DirtyClipEnabled))
            isClipping_ = now.isClipEnabled();
        if (flags.testFlag(DirtyClipRegion))
            clipTo(now.clipOperation(), now.transform().mapRect(QRectF(now.clipRegion().boundingRect())));
        if (flags.testFlag(DirtyClipPath))
            clipTo(now.clipOperation(), now.transform().map(now.clipPath()).boundingRect());
    }
    void drawTextItem(const QPointF& at, const QTextItem& item) override {
        if (item.text().trimmed().isEmpty())
            return;
        PaintedText painted;
        painted.text = item.text();
        painted.place = transform_.mapRect(
            QRectF(at.x(), at.y() - item.ascent(), item.width(), item.ascent() + item.descent()));
        painted.ink =
            transform_.mapRect(QFontMetricsF(item.font()).tightBoundingRect(item.text()).translated(at));
        painted.clip = isClipping_ && clip_ ? *clip_ : QRectF(-1e6, -1e6, 2e6, 2e6);
        add(painted);
    }
    void drawPixmap(const QRectF&, const QPixmap&, const QRectF&) override {}
    void drawTiledPixmap(const QRectF&, const QPixmap&, const QPointF&) override {}
    void drawImage(const QRectF&, const QImage&, const QRectF&, Qt::ImageConversionFlags) override {}
    void drawPath(const QPainterPath&) override {}
    void drawPolygon(const QPointF*, int, PolygonDrawMode) override {}
    void drawPolygon(const QPoint*, int, PolygonDrawMode) override {}
    void drawRects(const QRect*, int) override {}
    void drawRects(const QRectF*, int) override {}
    void drawLines(const QLine*, int) override {}
    void drawLines(const QLineF*, int) override {}
    void drawEllipse(const QRectF&) override {}
    void drawEllipse(const QRect&) override {}
    void drawPoints(const QPointF*, int) override {}
    void drawPoints(const QPoint*, int) override {}

    std::vector<PaintedText> taken{};

  private:
    void clipTo(Qt::ClipOperation how, const QRectF& area) {
        if (how == Qt::NoClip)
            clip_.reset();
        else
            clip_ = how == Qt::IntersectClip && clip_ ? clip_->intersected(area) : area;
    }
    // One line may come in several runs, one a font; or twice, each time a part of it, as on a bar of
    // progress.
    void add(const PaintedText& painted) {
        for (PaintedText& before : taken)
            if (before.text == painted.text && before.place == painted.place) {
                before.clip |= painted.clip;
                return;
            }
        if (!taken.empty()) {
            PaintedText& last = taken.back();
            if (std::abs(last.place.top() - painted.place.top()) < 2.0 && last.clip == painted.clip &&
                std::abs(last.place.right() - painted.place.left()) < kSlack) {
                last.text += painted.text;
                last.place |= painted.place;
                last.ink |= painted.ink;
                return;
            }
        }
        taken.push_back(painted);
    }

    QTransform transform_{};
    std::optional<QRectF> clip_{};
    bool isClipping_ = true;
};

class TextDevice : public QPaintDevice {
  public:
    explicit TextDevice(const QWidget& like) : like_(like) {}
    [[nodiscard]] QPaintEngine* paintEngine() const override { return &engine_; }
    [[nodiscard]] std::vector<PaintedText> taken() const { return engine_.taken; }

  protected:
    [[nodiscard]] int metric(PaintDeviceMetric what) const override {
        switch (what) {
            case PdmWidth:
                return like_.width();
            case PdmHeight:
                return like_.height();
            case PdmWidthMM:
                return like_.widthMM();
            case PdmHeightMM:
                return like_.heightMM();
            case PdmNumColors:
                return 1 << 24;
            case PdmDepth:
                return 32;
            case PdmDpiX:
            case PdmPhysicalDpiX:
                return like_.logicalDpiX();
            case PdmDpiY:
            case PdmPhysicalDpiY:
                return like_.logicalDpiY();
            case PdmDevicePixelRatio:
                return 1;
            case PdmDevicePixelRatioScaled:
                return static_cast<int>(devicePixelRatioFScale());
        }
        return 0;
    }

  private:
    const QWidget& like_;
    mutable TextEngine engine_;
};

QAbstractItemView* viewOf(const QWidget* viewport) {
    auto* view = qobject_cast<QAbstractItemView*>(viewport->parentWidget());
    return view != nullptr && view->viewport() == viewport ? view : nullptr;
}

// Qt paints a tab that is hidden all the same, on no room at all.
bool isOfAHiddenTab(const PaintedText& painted, const QWidget& widget) {
    const auto* tabs = qobject_cast<const QTabBar*>(&widget);
    for (int at = 0; tabs != nullptr && at < tabs->count(); ++at)
        if (!tabs->isTabVisible(at) && tabs->tabText(at) == painted.text)
            return true;
    return false;
}

void takeDown(QWidget* widget, std::vector<PaintedText>& into) {
    TextDevice device(*widget);
    widget->render(&device, QPoint(), QRegion(), QWidget::DrawWindowBackground);
    auto* view = viewOf(widget);
    const auto* area = qobject_cast<const QAbstractScrollArea*>(widget->parentWidget());
    const bool isViewport = area != nullptr && area->viewport() == widget;
    // The head of a table rolls with it.
    if (isViewport && qobject_cast<const QHeaderView*>(area) != nullptr)
        if (const auto* table = qobject_cast<const QAbstractScrollArea*>(area->parentWidget()))
            area = table;
    const auto* edit = qobject_cast<const QLineEdit*>(widget);
    for (PaintedText painted : device.taken()) {
        if (isOfAHiddenTab(painted, *widget))
            continue;
        QRectF room = widget->rect();
        // What was typed can be rolled by the keys; what is said as long as nothing was typed can't.
        if (edit != nullptr && !edit->text().isEmpty()) {
            room.adjust(-1e6, 0, 1e6, 0);
            painted.clip = room;
        }
        if (isViewport && rolls(*area, Qt::Horizontal))
            room.adjust(-1e6, 0, 1e6, 0);
        if (isViewport && rolls(*area, Qt::Vertical))
            room.adjust(0, -1e6, 0, 1e6);
        // What the painter itself cuts at the edge of the viewport can be rolled into view as well.
        if (isViewport && painted.clip == QRectF(widget->rect()))
            painted.clip = room;
        painted.clip = painted.clip.intersected(room);
        painted.by = view != nullptr ? view : widget;
        if (view != nullptr && qobject_cast<QHeaderView*>(view) == nullptr)
            painted.index = view->indexAt(painted.place.center().toPoint());
        into.push_back(painted);
    }
}

QStringList saidBy(const PaintedText& painted) {
    QStringList said;
    if (const auto* button = qobject_cast<const QAbstractButton*>(painted.by))
        said << button->text();
    if (const auto* label = qobject_cast<const QLabel*>(painted.by))
        said << label->text();
    if (const auto* edit = qobject_cast<const QLineEdit*>(painted.by))
        said << edit->text() << edit->placeholderText();
    if (const auto* box = qobject_cast<const QComboBox*>(painted.by))
        said << box->currentText() << box->placeholderText();
    if (const auto* tabs = qobject_cast<const QTabBar*>(painted.by))
        for (int at = 0; at < tabs->count(); ++at)
            said << tabs->tabText(at);
    if (qobject_cast<const QMenu*>(painted.by) != nullptr)
        for (const auto* action : painted.by->actions())
            said << action->text();
    if (painted.index.isValid())
        said << painted.index.data().toString();
    for (QString& words : said)
        words.remove(QLatin1Char('&'));
    return said;
}

}  // namespace

std::vector<PaintedText> paintedTexts(QWidget* root) {
    std::vector<PaintedText> all;
    for (QWidget* widget : seenUnder(root)) {
        const bool isPaper = qobject_cast<QGraphicsView*>(widget->parentWidget()) != nullptr;
        if (!widget->size().isEmpty() && !isPaper)
            takeDown(widget, all);
    }
    return all;
}

bool isElided(const PaintedText& painted) {
    if (!painted.text.contains(kEllipsis))
        return false;
    const QStringList said = saidBy(painted);
    const QString words = QString(painted.text).remove(QLatin1Char('&'));
    return std::none_of(said.begin(), said.end(), [&](const QString& each) { return each.contains(words); });
}

bool isClipped(const PaintedText& painted) {
    const QRectF& ink = painted.ink;
    const QRectF& clip = painted.clip;
    return ink.left() < clip.left() - kSlack || ink.right() > clip.right() + kSlack ||
           ink.top() < clip.top() - kSlack || ink.bottom() > clip.bottom() + kSlack;
}

}  // namespace wm::ui
