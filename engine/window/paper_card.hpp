#pragma once

#include "sim/bench/scene.hpp"

namespace matula::window {

struct App;

/// A paper beside the rows of its card, each pad looked at from near under the pointer or the keyboard; one
/// without a card by itself.
void draw_paper_card(App& app, const bench::Scene& scene, const bench::SeenPaper& paper);

} // namespace matula::window
