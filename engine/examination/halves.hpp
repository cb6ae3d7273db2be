#pragma once

#include <cstdint>
#include <string>

namespace matula::examination {

/// scenario::Scenario::bench_hash of a whole scenario's text: what the log of a sitting at its bench half
/// names. Empty for a text that cannot be halved.
[[nodiscard]] std::string bench_hash(const std::string& text);

/// The same scenario with another seed: the line `seed = ...` at the top is written anew. A text without one
/// comes back unchanged.
[[nodiscard]] std::string with_seed(const std::string& text, std::uint64_t seed);

} // namespace matula::examination
