#pragma once

#include "engine/strict/parted.hpp"

namespace matula::scenario {

/// A scenario's text in two. The bench half (`kept`) is what a bench cannot do without: the specimen, the
/// counter, the shelf, the request form, the questions. The key half (`taken`) is everything else: title,
/// level, debrief, answers, reasons, weights, marking rules, and whatever an author may add. Comments are in
/// neither.
[[nodiscard]] tl::expected<strict::Parted, scenario::Problems> halve(const std::string& text,
                                                                     const std::string& name);

} // namespace matula::scenario
