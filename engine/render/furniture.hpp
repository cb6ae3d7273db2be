#pragma once

#include "engine/render/gl.hpp"
#include "engine/render/layout.hpp"
#include "engine/render/lettering.hpp"
#include "engine/render/light.hpp"

#include <filesystem>
#include <vector>

namespace matula::render {

/// What furniture.frag can draw, by its numbers there.
enum class Furniture {
  Wall,
  Top,
  Plank,
  Bottle,
  Shadow,
  SmallCard,
  Burner,
  Bath,
  Thermometer,
  Paper,
  Inked,
  Lamp,
  Backdrop,
  Lid,
  Mark,
  Hole,
  Swatch
};
inline constexpr int furniture_kinds = 17;

/// Bench, wall, shelf, rack, bottles, burner, bath and cards: all that is not glassware with liquid in it.
class Carpenter {
public:
  [[nodiscard]] static tl::expected<Carpenter, std::string>
  create(const std::filesystem::path& assets_folder);

  /// Draws one thing into the bound target.
  void draw(Furniture kind, const Rect& at, const std::array<float, 4>& tune, const RoomLight& light,
            const Target& target);
  /// Everything on the bench that stays as it is.
  void draw_bench(const bench::Scene& scene, const Show& show, const SceneLayout& where,
                  const RoomLight& light, bool lamp_lit, const Target& target);
  /// The blurred room and a card in `room`, at `scale` pixels a mm; print ends at `bare_below_px`.
  void draw_backdrop(const Rect& room, const Rect& card, appearance::Card kind, float bare_below_px,
                     float scale, const RoomLight& light, const Target& target);
  /// Fronts that stand before the tubes.
  void draw_rack_front(const SceneLayout& where, const RoomLight& light, const Target& target);
  [[nodiscard]] GLuint print() const { return print_.get(); }

private:
  void write_labels(const Show& show, const SceneLayout& where, const Target& target);

  std::vector<Program> programs_; ///< By Furniture.
  ArrayName corners_;
  Lettering lettering_;
  TextureName print_;
  TextureName ink_;
  Rect card_;
  float scale_ = 1;
};

/// Share of the thread in a thermometer from -5 to 110 °C.
[[nodiscard]] float thread_share(double temperature_c);

} // namespace matula::render
