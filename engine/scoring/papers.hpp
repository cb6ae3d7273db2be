#pragma once

#include "sim/bench/bench.hpp"
#include "sim/reading/reference_reader.hpp"

#include <optional>
#include <string>

namespace matula::scoring {

/// Name of the piece of this kind of paper that was used last; empty when there is none.
[[nodiscard]] std::string find_paper(const bench::State& state, const std::string& kind);

/// Colour of the scale's pad on that piece in daylight; nothing for a piece or pad that is not there.
[[nodiscard]] std::optional<optics::Lab> pad_colour(const bench::State& state, const bench::Setup& setup,
                                                    const reading::PaperScale& scale,
                                                    const std::string& piece);

/// Reference reading of the pad beside its card, or of its colour's strength where there is no card.
[[nodiscard]] reading::GradeReading read_pad(const bench::State& state, const bench::Setup& setup,
                                             const reading::Scale& scale, const std::string& piece);

} // namespace matula::scoring
