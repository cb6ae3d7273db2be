#include "engine/render/vessel_painter.hpp"

#include "engine/render/bands.hpp"
#include "engine/render/glass.hpp"
#include "engine/render/hash.hpp"
#include "engine/render/lettering.hpp"
#include "engine/render/shader_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace matula::render {

using appearance::Appearance;

namespace {

std::string glass_defines(int pass, int card, bool round, const Band& band) {
  return fmt::format(
      "#define PASS {}\n#define CARD {}\n#define PART {}\n#define ROUND {:d}\n#define CLOT {:d}\n"
      "#define BED {:d}\n#define HOT {:d}\n",
      pass, card, static_cast<int>(band.part), round, band.clot, band.bed, band.hot);
}

/// 0 plain, 2 printed, 3 whatever stands behind.
int card_number(const Appearance& looks, const VesselPlace& place) {
  if (!place.own_card) {
    return 3;
  }
  return looks.view.card == appearance::Card::Printed ? 2 : 0;
}

} // namespace

tl::expected<VesselPainter, std::string> VesselPainter::create(const std::filesystem::path& assets_folder) {
  VesselPainter made;
  struct Wanted {
    Program* program;
    const char* vertex;
    const char* fragment;
  };
  made.assets_folder_ = assets_folder;
  const auto plain =
      load_program(assets_folder, "quad.vert", "vessel.frag", glass_defines(2, 3, true, Band()));
  if (!plain) {
    return tl::unexpected(plain.error());
  }
  const std::array<Wanted, 2> wanted{Wanted{&made.piece_, "piece.vert", "piece.frag"},
                                     Wanted{&made.float_, "quad.vert", "float.frag"}};
  for (const Wanted& w : wanted) {
    auto program = load_program(assets_folder, w.vertex, w.fragment);
    if (!program) {
      return tl::unexpected(program.error());
    }
    *w.program = std::move(*program);
  }
  GLuint arrays[2] = {0, 0};
  glGenVertexArrays(2, arrays);
  made.corners_ = ArrayName(arrays[0]);
  made.piece_array_ = ArrayName(arrays[1]);
  return made;
}

Rect VesselPainter::reach(const Appearance& looks, const VesselPlace& place) {
  const double outer = looks.inner_diameter_mm / 2 + looks.wall_mm + 1.2;
  const double top = looks.vessel_height_mm + 1;
  const double low = looks.wall_mm + 1;
  return {static_cast<float>(place.foot_x - outer * place.scale),
          static_cast<float>(place.foot_y - top * place.scale), static_cast<float>(2 * outer * place.scale),
          static_cast<float>((top + low) * place.scale)};
}

VesselPainter::Kept& VesselPainter::keep(const std::string& name, const Appearance& looks,
                                         const VesselPlace& place) {
  Kept& kept = kept_[name];
  const std::uint64_t content = look_hash(looks);
  if (kept.content != content || kept.scale != place.scale) {
    kept.content = content;
    kept.scale = place.scale;
    const RowImage image = row_image(looks, 1.0 / static_cast<double>(place.scale));
    kept.row_count = image.rows;
    kept.pitch_mm = static_cast<float>(image.pitch_mm);
    kept.rows = image.rows == 0 ? TextureName()
                                : make_texture(row_columns, image.rows, GL_RGBA32F, GL_RGBA, GL_FLOAT,
                                               image.texels.data(), false);
  }
  std::vector<DrawnPiece> pieces = drawn_pieces(looks);
  const std::vector<DrawnPiece> bubbles = boiling_bubbles(looks, place.seconds);
  pieces.insert(pieces.end(), bubbles.begin(), bubbles.end());
  for (const auto& more : {strewn_grains(looks), glass_marks(looks)}) {
    pieces.insert(pieces.end(), more.begin(), more.end());
  }
  kept.piece_count = static_cast<int>(pieces.size());
  if (!pieces.empty()) {
    GLuint buffer = 0;
    glGenBuffers(1, &buffer);
    kept.pieces = BufferName(buffer);
    glBindBuffer(GL_ARRAY_BUFFER, buffer);
    glBufferData(GL_ARRAY_BUFFER, static_cast<GLsizeiptr>(pieces.size() * sizeof(DrawnPiece)), pieces.data(),
                 GL_STREAM_DRAW);
  }
  return kept;
}

Program* VesselPainter::glass_for(const std::string& defines) {
  auto found = glass_.find(defines);
  if (found == glass_.end()) {
    auto program = load_program(assets_folder_, "quad.vert", "vessel.frag", defines);
    if (!program) {
      return nullptr; // The same source was compiled at creation: only a changed file gets here.
    }
    found = glass_.emplace(defines, std::move(*program)).first;
  }
  return &found->second;
}

void VesselPainter::draw_glass(int pass, const Kept& kept, const Appearance& looks, const VesselPlace& place,
                               const RoomLight& light, const Target& target, GLuint behind, GLuint print) {
  bind_texture(2, behind);
  bind_texture(1, print);
  bind_texture(0, kept.rows.get());
  glBindVertexArray(corners_.get());
  glBlendFunc(GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  const Rect all = reach(looks, place);
  const auto height_at = [&](float y) { return static_cast<double>((place.foot_y - y) / place.scale); };
  std::vector<Band> cut;
  if (pass == 1) {
    cut.push_back({height_at(all.y + all.h), height_at(all.y)});
  } else {
    cut = bands(looks, height_at(all.y + all.h), height_at(all.y));
  }
  for (const Band& band : cut) {
    const int card = pass == 1 ? 0 : card_number(looks, place);
    Program* program = glass_for(glass_defines(pass, card, looks.round_bottom, band));
    // Whole pixels, so that neighbouring bands meet without a seam.
    const float top = std::round(place.foot_y - static_cast<float>(band.to_mm) * place.scale);
    const float low = std::round(place.foot_y - static_cast<float>(band.from_mm) * place.scale);
    if (program != nullptr && low > top) {
      draw_band(*program, {all.x, top, all.w, low - top}, kept, looks, place, light, target);
    }
  }
}

void VesselPainter::draw_band(Program& p, const Rect& at, const Kept& kept, const Appearance& looks,
                              const VesselPlace& place, const RoomLight& light, const Target& target) {
  p.use();
  const auto f = [](double v) { return static_cast<float>(v); };
  const double outer = looks.inner_diameter_mm / 2 + looks.wall_mm;
  p.set("u_rect", at);
  p.set("u_target", static_cast<float>(target.width), static_cast<float>(target.height));
  p.set("u_foot", place.foot_x, place.foot_y);
  p.set("u_scale", place.scale);
  p.set("u_inner", f(looks.inner_diameter_mm / 2));
  p.set("u_outer", f(outer));
  p.set("u_height", f(looks.vessel_height_mm));
  p.set("u_level", f(looks.level_mm));
  p.set("u_rise", f(looks.meniscus_rise_mm));
  p.set("u_tilt", outer > 12 ? 0.02F : 0.06F);
  p.set("u_row_count", kept.row_count);
  p.set("u_pitch", kept.pitch_mm);
  p.set("u_black", looks.view.card == appearance::Card::Black ? 1 : 0);
  p.set("u_card_mm", std::array<float, 4>{(place.card.x - place.foot_x) / place.scale,
                                          (place.foot_y - place.card.y - place.card.h) / place.scale,
                                          (place.card.x + place.card.w - place.foot_x) / place.scale,
                                          (place.foot_y - place.card.y) / place.scale});
  p.set("u_card_far", f(outer + 3));
  p.set("u_print_mm", f(print_width_mm), f(print_height_mm));
  p.set("u_room", light.room);
  p.set("u_window", light.window);
  const auto bed = shown(looks.sediment.colour);
  p.set("u_bed", std::array<float, 4>{bed[0], bed[1], bed[2], f(looks.sediment.height_mm)});
  p.set("u_bed_rough", f(looks.sediment.roughness_mm));
  const auto clot = shown(looks.clot_colour);
  p.set("u_clot", std::array<float, 4>{clot[0], clot[1], clot[2], f(looks.clot_fraction)});
  p.set("u_clot_mm", f(looks.clot_from_mm), f(looks.clot_to_mm));
  p.set("u_blank", f(bare_card_mm(looks)));
  p.set("u_foam", f(looks.foam_mm));
  p.set("u_boil", f(looks.boiling));
  p.set("u_steam", f(looks.steam));
  p.set("u_time", f(std::fmod(place.seconds, 600.0)));
  p.set("u_seed", 1.0F + f(60 * unit_of(looks.grain_seed)));
  p.set("u_rows", 0);
  p.set("u_print", 1);
  p.set("u_scene", 2);
  draw_quad();
}

void VesselPainter::draw_pieces(const Kept& kept, const VesselPlace& place, const Target& target) {
  if (kept.piece_count == 0) {
    return;
  }
  piece_.use();
  piece_.set("u_target", static_cast<float>(target.width), static_cast<float>(target.height));
  piece_.set("u_foot", place.foot_x, place.foot_y);
  piece_.set("u_scale", place.scale);
  glBindVertexArray(piece_array_.get());
  glBindBuffer(GL_ARRAY_BUFFER, kept.pieces.get());
  for (GLuint i = 0; i < 3; ++i) {
    glEnableVertexAttribArray(i);
    // OpenGL takes an offset in the guise of a pointer.
    glVertexAttribPointer(i, 4, GL_FLOAT, GL_FALSE, sizeof(DrawnPiece),
                          // NOLINTNEXTLINE(performance-no-int-to-ptr)
                          reinterpret_cast<const void*>(static_cast<std::uintptr_t>(i) * 4 * sizeof(float)));
    glVertexAttribDivisor(i, 1);
  }
  glDrawArraysInstanced(GL_TRIANGLE_STRIP, 0, 4, kept.piece_count);
}

void VesselPainter::draw(const std::string& name, const Appearance& looks, const VesselPlace& place,
                         const RoomLight& light, const Target& target, GLuint behind, GLuint print,
                         const bench::SeenFloat* floating, double eye_mm) {
  glEnable(GL_BLEND);
  const Kept& kept = keep(name, looks, place);
  if (looks.pieces.empty() && floating == nullptr) {
    draw_glass(2, kept, looks, place, light, target, behind, print);
    draw_pieces(kept, place, target);
    return;
  }
  draw_glass(0, kept, looks, place, light, target, behind, print);
  if (floating != nullptr) {
    draw_float(kept, looks, place, light, target, *floating, eye_mm);
  }
  draw_pieces(kept, place, target);
  draw_glass(1, kept, looks, place, light, target, behind, print);
}

} // namespace matula::render
