// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/appearance.h"

#include <QApplication>
#include <QFontInfo>
#include <QPalette>
#include <QStyleFactory>

namespace ringrule {
namespace {

/// The few colours from which everything is drawn.
struct Tones {
    const char* ground;  ///< behind pages
    const char* side;    ///< behind the page list
    const char* card;    ///< lists, tables, charts
    const char* line;
    const char* text;
    const char* quiet;
    const char* accent;
    const char* onAccent;
    const char* problem;
    const char* news;
};

constexpr Tones kLight{"#F3F5F6", "#E6EBED", "#FFFFFF", "#D5DCDF", "#1F2A30",
                       "#5B6870", "#0072B2", "#FFFFFF", "#FBE9DF", "#E3F1EB"};
constexpr Tones kDark{"#171C1F", "#12171A", "#1E2428", "#39434A", "#E8ECEE",
                      "#A3AEB4", "#56B4E9", "#0D1518", "#4A2A17", "#173A2D"};

QPalette paletteOf(const Tones& tones) {
    QPalette palette;
    palette.setColor(QPalette::Window, tones.ground);
    palette.setColor(QPalette::WindowText, tones.text);
    palette.setColor(QPalette::Base, tones.card);
    palette.setColor(QPalette::AlternateBase, tones.ground);
    palette.setColor(QPalette::Text, tones.text);
    palette.setColor(QPalette::PlaceholderText, tones.quiet);
    palette.setColor(QPalette::Button, tones.card);
    palette.setColor(QPalette::ButtonText, tones.text);
    palette.setColor(QPalette::ToolTipBase, tones.card);
    palette.setColor(QPalette::ToolTipText, tones.text);
    palette.setColor(QPalette::Highlight, tones.accent);
    palette.setColor(QPalette::HighlightedText, tones.onAccent);
    palette.setColor(QPalette::Link, tones.accent);
    palette.setColor(QPalette::Mid, tones.line);
    for (const auto role : {QPalette::WindowText, QPalette::Text, QPalette::ButtonText})
        palette.setColor(QPalette::Disabled, role,
                         QColor(tones.quiet).lighter(QColor(tones.ground).lightness() > 128 ? 140 : 70));
    return palette;
}

constexpr const char* kSheet = R"(
QMainWindow, QDialog { background: @ground; }
QLabel[role="display"] { font-size: @size30; font-weight: 600; }
QLabel[role="title"] { font-size: @size22; font-weight: 600; }
QLabel[role="heading"] { font-size: @size18; font-weight: 600; }
QLabel[role="section"] { font-size: @size13; font-weight: 600; }
QLabel[role="lead"] { font-size: @size15; }
QLabel[role="figure"] { font-size: @size20; font-weight: 600; }
QLabel[role="value"] { font-size: @size15; }
QLabel[role="quiet"] { color: @quiet; }
QLabel[role="badge"] { font-weight: 600; padding: 7px 10px; background: @card; border: 1px solid @line; border-radius: 5px; }
QLabel[role="caution"] { color: @quiet; padding-top: 8px; border-top: 1px solid @line; }
QLabel[role="problem"] { color: @text; }
QListWidget#pageList { background: @side; border: none; border-radius: 0; padding: 14px 8px; outline: none; font-size: @size14; }
QListWidget#pageList::item { padding: 10px 12px; border-left: 3px solid transparent; color: @text; }
QListWidget#pageList::item:selected { background: @card; color: @text; border-left: 3px solid @accent; }
QListWidget#pageList::item:hover:!selected { background: @ground; }
QListWidget#pageList::item:disabled { color: @quiet; }
QListView, QTableView, QScrollArea, QTextBrowser { background: @card; border: 1px solid @line; border-radius: 6px; }
QScrollArea > QWidget > QWidget { background: @card; }
QScrollArea[role="page"], QScrollArea[role="page"] > QWidget > QWidget { background: @ground; border: none; border-radius: 0; }
QListView:focus, QTableView:focus, QScrollArea:focus, QGraphicsView:focus { border: 1px solid @accent; }
QGraphicsView { border: 1px solid @line; border-radius: 0; }
QListView { padding: 3px; outline: none; }
QListView#animalList { selection-background-color: @tint; selection-color: @text; }
QListView#animalList::indicator { width: 11px; height: 11px; border: 1px solid @quiet; border-radius: 3px; background: @card; }
QListView#animalList::indicator:checked { image: url(:/ringrule/check-@shade.svg); }
QScrollArea#photosArea { padding: 8px; }
QTableView { outline: none; selection-background-color: @tint; selection-color: @text; }
QTableView::item { padding: 0 10px; border-bottom: 1px solid @ground; }
QTableView#measureTable::item { padding: 0 2px; }
QTableView#measureTable QHeaderView::section { padding: 5px 4px; }
QHeaderView { background: transparent; }
QHeaderView::section { background: @card; color: @quiet; border: none; border-bottom: 1px solid @line; padding: 8px 13px; }
QPushButton { background: @card; border: 1px solid @line; border-radius: 5px; padding: 6px 14px; min-height: 18px; }
QPushButton:hover { border-color: @accent; }
QPushButton:pressed { background: @tint; }
QPushButton:focus { border: 1px solid @accent; }
QPushButton:disabled { color: @faint; background: @ground; }
QPushButton[role="primary"] { background: @accent; color: @onAccent; border-color: @accent; font-weight: 600; }
QPushButton[role="primary"]:disabled { background: @line; color: @quiet; border-color: @line; }
QPushButton[role="primary"]:focus { border: 2px solid @text; }
QToolButton { background: @card; border: 1px solid @line; border-radius: 5px; padding: 3px 7px; min-height: 18px; }
QToolButton:hover, QToolButton:focus { border-color: @accent; }
QToolButton:checked { background: @tint; border-color: @accent; font-weight: 600; }
QToolButton:disabled { color: @faint; background: @ground; }
QComboBox, QLineEdit, QDateEdit, QSpinBox, QDoubleSpinBox { background: @card; border: 1px solid @line; border-radius: 5px; padding: 5px 9px; min-height: 18px; }
QComboBox:focus, QLineEdit:focus, QDateEdit:focus, QSpinBox:focus, QDoubleSpinBox:focus { border-color: @accent; }
QComboBox::drop-down, QDateEdit::drop-down { border: none; width: 22px; }
QComboBox::down-arrow, QDateEdit::down-arrow { image: url(:/ringrule/arrow-@shade.svg); width: 10px; height: 10px; }
QSpinBox:disabled, QDoubleSpinBox:disabled { color: @faint; background: @ground; }
QSpinBox::up-button, QSpinBox::down-button, QDoubleSpinBox::up-button, QDoubleSpinBox::down-button { border: none; width: 0; }
QComboBox QAbstractItemView { background: @card; border: 1px solid @line; selection-background-color: @tint; selection-color: @text; }
QCommandLinkButton { text-align: left; }
QTabWidget::pane { border: none; border-top: 1px solid @line; }
QTabBar { qproperty-drawBase: 0; }
QTabBar::tab { background: transparent; border: none; border-bottom: 2px solid transparent; padding: 5px 12px; color: @quiet; }
QTabBar::tab:selected { color: @text; border-bottom: 2px solid @accent; }
QTabBar::tab:hover { color: @text; }
QTabBar::tab:focus { color: @accent; }
QPushButton::menu-indicator { image: url(:/ringrule/arrow-@shade.svg); width: 10px; height: 10px; subcontrol-position: right center; right: 8px; }
QPushButton#noteButton, QPushButton#changeButton { padding-right: 24px; }
QCheckBox { spacing: 7px; }
QCheckBox::indicator { width: 13px; height: 13px; border: 1px solid @quiet; border-radius: 3px; background: @card; }
QCheckBox::indicator:checked { image: url(:/ringrule/check-@shade.svg); }
QCheckBox::indicator:disabled { border-color: @line; }
QCheckBox:focus { color: @accent; }
QCheckBox::indicator:focus { border: 2px solid @accent; }
ringrule--MessageStrip { border: none; border-bottom: 1px solid @line; }
ringrule--MessageStrip[kind="problem"] { background: @problem; }
ringrule--MessageStrip[kind="news"] { background: @news; }
ringrule--MessageStrip QToolButton { border: none; background: transparent; }
QScrollBar:vertical { background: transparent; width: 11px; margin: 2px; }
QScrollBar:horizontal { background: transparent; height: 11px; margin: 2px; }
QScrollBar::handle { background: @line; border-radius: 3px; }
QScrollBar::handle:vertical { min-height: 32px; }
QScrollBar::handle:horizontal { min-width: 32px; }
QScrollBar::handle:hover { background: @faint; }
QScrollBar::add-line, QScrollBar::sub-line { width: 0; height: 0; }
QScrollBar::add-page, QScrollBar::sub-page { background: transparent; }
QSplitter::handle { background: transparent; }
QStatusBar { background: @side; color: @quiet; }
QStatusBar::item { border: none; }
QProgressBar { border: 1px solid @line; border-radius: 4px; background: @card; height: 10px; text-align: center; }
QProgressBar::chunk { background: @accent; border-radius: 3px; }
QMenuBar { background: @side; }
)";

QString mixed(const QString& over, const QString& under, double share) {
    const QColor a(over);
    const QColor b(under);
    const auto mix = [share](int x, int y) { return qRound(share * x + (1.0 - share) * y); };
    return QColor(mix(a.red(), b.red()), mix(a.green(), b.green()), mix(a.blue(), b.blue())).name();
}

QString sheetOf(const Tones& tones, bool dark) {
    QString sheet = QString::fromUtf8(kSheet);
    // Sizes follow the system's own text size: 13 stands for it.
    const double unit = QFontInfo(QApplication::font()).pixelSize() / 13.0;
    for (const int size : {30, 22, 20, 18, 15, 14, 13})
        sheet.replace(QStringLiteral("@size%1").arg(size), QStringLiteral("%1px").arg(qRound(size * unit)));
    sheet.replace(QStringLiteral("@shade"), dark ? QStringLiteral("dark") : QStringLiteral("light"));
    sheet.replace(QStringLiteral("@tint"), mixed(tones.accent, tones.card, dark ? 0.28 : 0.14));
    sheet.replace(QStringLiteral("@faint"), mixed(tones.quiet, tones.ground, 0.6));
    // Longer names first: "@onAccent" is no "@on".
    const std::vector<std::pair<const char*, const char*>> named = {
        {"@ground", tones.ground},   {"@side", tones.side},   {"@card", tones.card},     {"@line", tones.line},
        {"@text", tones.text},       {"@quiet", tones.quiet}, {"@accent", tones.accent}, {"@onAccent", tones.onAccent},
        {"@problem", tones.problem}, {"@news", tones.news}};
    for (const auto& [name, tone] : named) sheet.replace(QString::fromUtf8(name), QString::fromUtf8(tone));
    return sheet;
}

}  // namespace

void setAppearance(Colours colours, int textPercent) {
    static const QFont systemFont = QApplication::font();
    QFont font = systemFont;
    font.setPixelSize(qRound(QFontInfo(systemFont).pixelSize() * textPercent / 100.0));
    QApplication::setFont(font);
    static const bool systemIsDark = QApplication::palette().color(QPalette::Window).lightness() < 128;
    const bool dark = colours == Colours::Dark || (colours == Colours::AsSystem && systemIsDark);
    const Tones& tones = dark ? kDark : kLight;
    QApplication::setStyle(QStyleFactory::create(QStringLiteral("Fusion")));
    QApplication::setPalette(paletteOf(tones));
    qApp->setStyleSheet(sheetOf(tones, dark));
}

}  // namespace ringrule
