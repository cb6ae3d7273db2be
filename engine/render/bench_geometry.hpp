#pragma once

#include "engine/render/hash.hpp"
#include "engine/render/layout.hpp"
#include "sim/bench/scene.hpp"

#include <cstdint>

namespace matula::render {

/// Small questions about where things stand on the drawn bench and whether they move. For this room only.

[[nodiscard]] Rect hand_card(const Rect& room);

/// Adds the rectangle to the hash; the hash so far.
std::uint64_t hash_of(const Rect& r, Hash& h);

[[nodiscard]] const bench::SeenVessel* find(const bench::Scene& scene, const bench::VesselName& name);

/// The same layout with its corner at 0, 0.
[[nodiscard]] SceneLayout at_origin(SceneLayout at);

[[nodiscard]] Rect grown(const Rect& r, float by);

[[nodiscard]] optics::Lamp lamp_of(const bench::Scene& scene, const Show& show);

[[nodiscard]] Rect hand_steam(const Rect& glass);

/// Wooden holder that grips a tube over the flame.
[[nodiscard]] Rect clamp_of(const Rect& glass);

[[nodiscard]] bool lively(const appearance::Appearance& looks);

[[nodiscard]] std::uint64_t float_hash(const bench::Scene& scene, const bench::VesselName& name,
                                       double eye_mm);

} // namespace matula::render
