#pragma once

#include "engine/render/rect.hpp"
#include "sim/bench/scene.hpp"

#include <array>
#include <map>
#include <string>

namespace matula::render {

/// What the person has before the eyes. None of it belongs to the world: it is never logged here and changes
/// nothing.
struct Show {
  bench::VesselName in_hand; ///< Drawn large against its card (its `looks.view`); empty for nothing.
  double eye_mm = 0;         ///< Height of the eye above the liquid's surface, for the float's scale.
  double seconds = 0;        ///< Moves the flame; the same seconds give the same picture.
  double boil_seconds = 0;   ///< Moves bubbles and steam, which stand still when the bench's clock does.
  std::map<std::string, std::string>
      labels;         ///< Words on the paper label of a vessel or a bottle, by vessel name or
                      ///< reagent key, and on the tag before a vessel by "tag:" and its name; broken to
                      ///< fit, or where "\n" stands. Without words a label stays blank, a tag away.
  std::string marked; ///< Vessel, "shelf:" and a reagent, "burner" or "bath" to lift out with a soft light.
};

/// Where everything is, for drawing and for finding what the pointer is on.
struct SceneLayout {
  Rect area;  ///< All of the picture.
  Rect bench; ///< The bench with everything standing on it.
  Rect hand;  ///< The large view; empty when nothing is in the hand.
  std::map<bench::VesselName, Rect>
      vessels; ///< On the bench: the glass itself. A tube in the hand keeps its hole in the rack.
  std::map<std::string, Rect> reagents; ///< Bottles on the shelf.
  std::map<std::string, Rect>
      paper; ///< Paper labels of vessels and bottles, should a caller write on them itself.
  Rect rack;
  Rect burner; ///< Body of the burner.
  Rect flame;  ///< Where a tube is heated: drop a tube here to hold it in the flame.
  Rect bath;   ///< Beaker of hot water: drop a tube here.
  Rect bath_thermometer;
  std::map<std::string, Rect> test_papers; ///< Lying on the bench, the latest ones, by name.
  std::array<Rect, 3> cards;               ///< By appearance::Card, standing on the bench.
  Rect lamp;                               ///< Bench lamp: daylight or lamp light.
  Rect hand_vessel;                        ///< The glass in the large view.
  float hand_scale_px_mm = 0;              ///< Scale of the large view.
  float hand_bottom_px = 0; ///< y of the inside bottom in the large view (may lie below the view).
};

/// Places a scene in `area`. Pure; the same scene and area give the same places.
[[nodiscard]] SceneLayout layout(const bench::Scene& scene, const Show& show, const Rect& area);

} // namespace matula::render
