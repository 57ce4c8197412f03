// SPDX-License-Identifier: GPL-3.0-or-later
#pragma once

#include <cassert>
#include <string>
#include <utility>
#include <variant>

namespace ringrule {

/// Why something cannot be told from what was given: an ordinary answer, not an error.
struct Refusal {
    std::string reason;    ///< stable id, lower-case words joined by hyphens, listed in `docs/remarks.md`
    std::string sentence;  ///< one plain sentence for a keeper that says what to do next

    friend bool operator==(const Refusal&, const Refusal&) = default;
};

/// A value, or the refusal that stands in its place.
template <class T>
class Outcome {
public:
    Outcome(T value) : held_(std::move(value)) {}            // NOLINT(google-explicit-constructor): reads as its value
    Outcome(Refusal refusal) : held_(std::move(refusal)) {}  // NOLINT(google-explicit-constructor): reads as its refusal

    [[nodiscard]] bool ok() const noexcept { return std::holds_alternative<T>(held_); }
    explicit operator bool() const noexcept { return ok(); }

    /// The value. Precondition: `ok()`.
    [[nodiscard]] const T& value() const& {
        assert(ok());
        return *std::get_if<T>(&held_);
    }
    [[nodiscard]] T&& value() && {
        assert(ok());
        return std::move(*std::get_if<T>(&held_));
    }

    /// The refusal. Precondition: `!ok()`.
    [[nodiscard]] const Refusal& refusal() const {
        assert(!ok());
        return *std::get_if<Refusal>(&held_);
    }

private:
    std::variant<T, Refusal> held_;
};

}  // namespace ringrule
