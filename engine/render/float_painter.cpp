#include "engine/render/glass.hpp"
#include "engine/render/hash.hpp"
#include "engine/render/lettering.hpp"
#include "engine/render/vessel_painter.hpp"

#include <algorithm>
#include <cmath>

namespace matula::render {

/// Where the stem widens into the bulb; as float.frag has it.
constexpr double neck_mm = 6;

void VesselPainter::draw_float(const Kept& kept, const appearance::Appearance& looks,
                               const VesselPlace& place, const RoomLight& light, const Target& target,
                               const bench::SeenFloat& seen, double eye_mm) {
  const instrument::Urinometer& u = seen.urinometer_without_zero_error;
  const auto f = [](double v) { return static_cast<float>(v); };
  const double around = std::acos(-1.0) * u.stem_diameter_mm / 2;
  const std::uint64_t content =
      Hash().add(u.scale_length_mm, 1e-3).add(around, 1e-3).add(u.scale_end, 1e-6).value();
  if (paper_.content != content) {
    const auto lettering = Lettering::load();
    if (!lettering) {
      return; // A float without a font cannot be read; creation has already refused that.
    }
    const Canvas scale = float_scale(*lettering, u.scale_length_mm, around, u.scale_end);
    paper_.texture =
        make_texture(scale.width, scale.height, GL_R8, GL_RED, GL_UNSIGNED_BYTE, scale.ink.data(), true);
    paper_.content = content;
  }
  // The line an eye at this height sees in the plane of the surface.
  const double read = seen.scale.reading_at_surface + seen.scale.parallax_per_mm * eye_mm;
  const double one_mm = looks.level_mm + mark_depth_mm(read, u.scale_length_mm, u.scale_end);
  const double climb = mark_depth_mm(seen.scale.reading_at_surface, u.scale_length_mm, u.scale_end) -
                       mark_depth_mm(seen.scale.reading_at_meniscus_top, u.scale_length_mm, u.scale_end);
  float_.use();
  Rect all = reach(looks, place);
  all.y -= 60 * place.scale;
  all.h += 60 * place.scale;
  float_.set("u_rect", all);
  float_.set("u_target", static_cast<float>(target.width), static_cast<float>(target.height));
  float_.set("u_foot", place.foot_x, place.foot_y);
  float_.set("u_scale", place.scale);
  float_.set("u_axis", f(seen.state.lean_mm));
  float_.set("u_one_mm", f(one_mm));
  float_.set("u_stem_r", f(u.stem_diameter_mm / 2));
  float_.set("u_bulb_r", f(u.bulb_diameter_mm / 2));
  float_.set("u_bulb_len", f(std::max(4.0, u.bulb_length_mm - scale_margin_mm -
                                               neck_mm))); // Neck and bare paper are part of it.
  float_.set("u_scale_len", f(u.scale_length_mm));
  float_.set("u_margin", f(scale_margin_mm));
  float_.set("u_level", f(looks.level_mm));
  float_.set("u_climb", f(std::max(climb, 0.0)));
  float_.set("u_wide", f(water_index));
  float_.set("u_paper", 3);
  float_.set("u_rows", 0);
  float_.set("u_row_count", kept.row_count);
  float_.set("u_pitch", kept.pitch_mm);
  float_.set("u_room", light.room);
  float_.set("u_window", light.window);
  bind_texture(3, paper_.texture.get());
  bind_texture(0, kept.rows.get());
  glBindVertexArray(corners_.get());
  glBlendFunc(GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  draw_quad();
}

} // namespace matula::render
