// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <optional>
#include <string>
#include <vector>

namespace ringrule {

/// A cell of RFC 4180.
[[nodiscard]] std::string csvCell(const std::string& text);

/// A text that no spreadsheet runs as a formula: an apostrophe goes before one that begins with = + - @, a control
/// character or an apostrophe. `unguarded` takes it off again.
[[nodiscard]] std::string guarded(const std::string& text);
[[nodiscard]] std::string unguarded(const std::string& text);

/// Cells of a table as text, line by line: commas, semicolons or tabs, quotes, line ends of any kind, with or without a
/// byte order mark.
class CsvReader {
public:
    /// `separator` 0: the one that the first line has most of.
    /// `path` is the file that a message names.
    explicit CsvReader(std::string text, char separator = 0, std::string path = {});

    /// The next line that is not empty, or nothing. Throws `Error(BadData)` when a quotation mark is never closed.
    [[nodiscard]] std::optional<std::vector<std::string>> next();
    /// The line number, from 1, on which the last one began.
    [[nodiscard]] std::size_t line() const { return began_; }
    [[nodiscard]] char separator() const { return separator_; }

private:
    std::string cell();
    std::string text_;
    std::string path_;
    std::size_t at_ = 0;
    std::size_t line_ = 1;
    std::size_t began_ = 0;
    char separator_;
};

/// The whole of a text file in UTF-8. Throws `Error(BadData)`.
[[nodiscard]] std::string textOfFile(const std::string& path);

}  // namespace ringrule
