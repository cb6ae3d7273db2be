#pragma once

#include "sim/bench/scene.hpp"

#include <optional>
#include <string>

namespace matula::bench {

/// A field of a test paper that lies on the bench, by the paper's name and the field's key; nothing when it
/// is not there.
[[nodiscard]] std::optional<SeenPad> pad_in(const Scene& scene, const std::string& paper,
                                            const std::string& key);

/// The row of a reference card for that field, by the kind of paper; an empty one when there is none.
[[nodiscard]] SeenCardRow card_row_in(const Scene& scene, const std::string& kind, const std::string& key);

} // namespace matula::bench
