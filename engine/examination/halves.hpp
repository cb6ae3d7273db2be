#pragma once

#include "engine/strict/parted.hpp"

#include <cstdint>

namespace matula::examination {

/// A scenario's text in two. The bench half (`kept`) is what a bench cannot do without: the specimen, the
/// counter, the shelf, the request form, the questions. The key half (`taken`) is everything else: title,
/// level, debrief, answers, reasons, weights, marking rules, and whatever an author may add. Comments are in
/// neither.
[[nodiscard]] tl::expected<strict::Parted, scenario::Problems> halve(const std::string& text,
                                                                     const std::string& name);

/// scenario::Scenario::content_hash of the bench half of a whole scenario: what the log of a sitting at it
/// names. Empty for a text that cannot be halved.
[[nodiscard]] std::string bench_hash(const std::string& text);

/// The same scenario with another seed: the line `seed = ...` at the top is written anew. A text without one
/// comes back unchanged.
[[nodiscard]] std::string with_seed(const std::string& text, std::uint64_t seed);

} // namespace matula::examination
