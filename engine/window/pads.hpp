#pragma once

#include "sim/bench/scene.hpp"

#include <imgui.h>

#include <string>

namespace matula::window {

/// A colour of the bench as the display shows it.
[[nodiscard]] ImU32 shown(const optics::Xyz& colour);

/// Words of a card short enough to stand under a field: "neg.".
[[nodiscard]] std::string brief(const std::string& word);

/// A pad of a test paper, `side` pixels wide, with its spots where cells broke on it.
void draw_pad(const bench::SeenPad& pad, const ImVec2& at, float side);

/// Fields of a card's row, `wide` pixels in all and `tall` each, their words below.
void draw_fields(const bench::SeenCardRow& row, const ImVec2& at, float wide, float tall);

/// The pad held near the eye over its row of the card, where the cursor stands; a row without fields shows
/// the pad alone.
void draw_near(const bench::SeenPad& pad, const bench::SeenCardRow& row);

} // namespace matula::window
