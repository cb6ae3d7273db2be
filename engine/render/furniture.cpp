#include "engine/render/furniture.hpp"

#include "engine/render/label.hpp"
#include "engine/render/shader_file.hpp"

#include <fmt/format.h>

#include <algorithm>
#include <cmath>

namespace matula::render {

namespace {

/// What to write on a label: the caller's words, or the number of a tube's hole.
std::string words_for(const std::string& key, const Show& show) {
  const bool hole = key.starts_with("hole:");
  const std::string name = hole ? key.substr(5) : key;
  const auto given = show.labels.find(name);
  if (given != show.labels.end()) {
    return given->second;
  }
  return hole ? name.substr(name.find('-') + 1) : std::string();
}

} // namespace

float thread_share(double temperature_c) {
  return static_cast<float>(std::clamp((temperature_c + 5) / 115, 0.0, 1.0));
}

tl::expected<Carpenter, std::string> Carpenter::create(const std::filesystem::path& assets_folder) {
  Carpenter made;
  for (int kind = 0; kind < furniture_kinds; ++kind) {
    auto program =
        load_program(assets_folder, "quad.vert", "furniture.frag", fmt::format("#define KIND {}\n", kind));
    if (!program) {
      return tl::unexpected(program.error());
    }
    made.programs_.push_back(std::move(*program));
  }
  auto lettering = Lettering::load();
  if (!lettering) {
    return tl::unexpected(lettering.error());
  }
  made.lettering_ = std::move(*lettering);
  const Canvas card = printed_card(made.lettering_);
  made.print_ = make_texture(card.width, card.height, GL_R8, GL_RED, GL_UNSIGNED_BYTE, card.ink.data(), true);
  const std::uint8_t bare = 255;
  made.ink_ = make_texture(1, 1, GL_R8, GL_RED, GL_UNSIGNED_BYTE, &bare, false);
  GLuint array = 0;
  glGenVertexArrays(1, &array);
  made.corners_ = ArrayName(array);
  return made;
}

void Carpenter::draw(Furniture kind, const Rect& at, const std::array<float, 4>& tune, const RoomLight& light,
                     const Target& target) {
  if (at.empty()) {
    return;
  }
  Program& p = programs_[static_cast<std::size_t>(kind)];
  p.use();
  p.set("u_rect", at);
  p.set("u_target", static_cast<float>(target.width), static_cast<float>(target.height));
  p.set("u_ink_size", static_cast<float>(target.width), static_cast<float>(target.height));
  p.set("u_tune", tune);
  p.set("u_tint", light.tint);
  p.set("u_card_px", card_);
  p.set("u_scale", scale_);
  p.set("u_print_mm", static_cast<float>(print_width_mm), static_cast<float>(print_height_mm));
  p.set("u_ink", 0);
  p.set("u_print", 1);
  bind_texture(1, print_.get());
  bind_texture(0, ink_.get());
  glBindVertexArray(corners_.get());
  glEnable(GL_BLEND);
  glBlendFunc(GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  draw_quad();
}

void Carpenter::write_labels(const Show& show, const SceneLayout& where, const Target& target) {
  Canvas canvas(target.width, target.height);
  for (const auto& [key, paper] : where.paper) {
    const bool small = key.starts_with("hole:") || key.starts_with("tag:");
    const FittedLabel label = fit_label(lettering_, words_for(key, show), paper.w * 0.92,
                                        paper.h * (small ? 1.1 : 0.94), small ? 19 : 28);
    double y = paper.y + (paper.h - label.size_px * static_cast<double>(label.lines.size())) / 2;
    for (const std::string& line : label.lines) {
      const double wide = lettering_.width(line, label.size_px);
      lettering_.print(canvas, line, paper.x + (paper.w - wide) / 2, y, label.size_px);
      y += label.size_px;
    }
  }
  ink_ = make_texture(canvas.width, canvas.height, GL_R8, GL_RED, GL_UNSIGNED_BYTE, canvas.ink.data(), false);
}

void Carpenter::draw_bench(const bench::Scene& scene, const Show& show, const SceneLayout& where,
                           const RoomLight& light, bool lamp_lit, const Target& target) {
  write_labels(show, where, target);
  const Rect& b = where.bench;
  const float horizon = b.y + std::floor(b.h * 0.60F);
  const auto put = [&](Furniture kind, const Rect& at, float one = 0, float two = 0) {
    draw(kind, at, {one, two, 0, 0}, light, target);
  };
  const auto shadow = [&](const Rect& of, float wide, float tall, float dark) {
    put(Furniture::Shadow, {of.x + of.w * (0.55F - wide / 2), of.y + of.h - tall * 0.55F, of.w * wide, tall},
        dark);
  };
  put(Furniture::Wall, {b.x, b.y, b.w, horizon - b.y});
  put(Furniture::Top, {b.x, horizon, b.w, b.y + b.h - horizon});
  // Shelf and bottles.
  const Rect shelf{b.x, b.y + b.h * 0.262F, b.w * 0.80F, b.h * 0.026F};
  put(Furniture::Shadow, {shelf.x - 40, shelf.y + shelf.h * 0.4F, shelf.w + 60, 30}, 0.35F);
  put(Furniture::Plank, shelf, 1.0F, 0.30F);
  for (const auto& [key, bottle] : where.reagents) {
    put(Furniture::Shadow,
        {bottle.x - bottle.w * 0.1F, bottle.y + bottle.h * 0.12F, bottle.w * 1.5F, bottle.h * 0.9F}, 0.22F);
    put(Furniture::Bottle, bottle);
    put(Furniture::Paper, where.paper.at(key), 1);
  }
  put(Furniture::Lamp, where.lamp, lamp_lit ? 1.0F : 0.0F);
  // Rack: posts, back of the upper board with its holes, the foot the tubes stand on.
  const Rect& r = where.rack;
  shadow(r, 1.15F, 46, 0.55F);
  put(Furniture::Plank, {r.x, r.y + r.h * 0.26F, r.w * 0.026F, r.h * 0.70F}, 2.0F, 0.0F);
  put(Furniture::Plank, {r.x + r.w * 0.974F, r.y + r.h * 0.26F, r.w * 0.026F, r.h * 0.70F}, 2.5F, 0.0F);
  put(Furniture::Plank, {r.x + r.w * 0.02F, r.y + r.h * 0.60F, r.w * 0.96F, r.h * 0.045F}, 5.5F, 0.1F);
  put(Furniture::Plank, {r.x, r.y + r.h * 0.27F, r.w, r.h * 0.075F}, 3.0F, 1.0F);
  put(Furniture::Plank, {r.x, r.y + r.h * 0.88F, r.w, r.h * 0.06F}, 3.7F, 1.0F);
  for (const auto& [key, hole] : where.paper) {
    if (key.starts_with("hole:")) {
      put(Furniture::Hole, {hole.x + hole.w * 0.18F, r.y + r.h * 0.285F, hole.w * 0.64F, r.h * 0.045F});
      put(Furniture::Hole, {hole.x + hole.w * 0.22F, r.y + r.h * 0.893F, hole.w * 0.56F, r.h * 0.034F});
    }
  }
  for (const auto& v : scene.vessels) {
    if (!v.name.starts_with("tube-")) {
      shadow(where.vessels.at(v.name), 1.5F, 26, 0.55F);
    }
  }
  for (const auto& [key, tag] : where.paper) {
    if (key.starts_with("tag:") && show.labels.count(key) != 0) {
      put(Furniture::Paper, tag, 0);
    }
  }
  for (std::size_t i = 0; i < where.cards.size(); ++i) {
    shadow(where.cards[i], 1.4F, 14, 0.5F);
    put(Furniture::SmallCard, where.cards[i], static_cast<float>(i));
  }
  shadow(where.bath, 1.25F, 30, 0.6F);
  put(Furniture::Thermometer, where.bath_thermometer, thread_share(scene.bath_c));
  put(Furniture::Bath, where.bath, 0);
  shadow(where.burner, 1.3F, 30, 0.6F);
  put(Furniture::Burner, where.burner);
}

void Carpenter::draw_backdrop(const Rect& room, const Rect& card, appearance::Card kind, float bare_below_px,
                              float scale, const RoomLight& light, const Target& target) {
  card_ = card;
  scale_ = scale;
  draw(Furniture::Backdrop, room, {static_cast<float>(kind), bare_below_px, 0, 0}, light, target);
}

void Carpenter::draw_rack_front(const SceneLayout& where, const RoomLight& light, const Target& target) {
  const Rect& r = where.rack;
  draw(Furniture::Plank, {r.x, r.y + r.h * 0.315F, r.w, r.h * 0.055F}, {3.1F, 0.12F, 0, 0}, light, target);
  draw(Furniture::Plank, {r.x, r.y + r.h * 0.925F, r.w, r.h * 0.075F}, {3.8F, 0.08F, 0, 0}, light, target);
  for (const auto& [key, hole] : where.paper) {
    if (key.starts_with("hole:")) {
      draw(Furniture::Inked, hole, {}, light, target);
    }
  }
}

} // namespace matula::render
