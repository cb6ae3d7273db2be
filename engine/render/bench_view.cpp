#include "engine/render/bench_view.hpp"

#include "engine/render/bench_geometry.hpp"
#include "engine/render/bench_view_impl.hpp"
#include "engine/render/glass.hpp"
#include "engine/render/shader_file.hpp"

#include <algorithm>
#include <cmath>

namespace matula::render {

bool load_gl(void* (*find)(const char* name)) {
  return gladLoadGL(reinterpret_cast<GLADloadfunc>(find)) != 0 && GLAD_GL_VERSION_3_3 != 0;
}

bool moves(const bench::Scene& scene) {
  const bool lively = std::any_of(scene.vessels.begin(), scene.vessels.end(), [](const bench::SeenVessel& v) {
    return v.looks.boiling > 0.01 || v.looks.steam > 0.01;
  });
  const bool bobs = scene.floating && (std::abs(scene.floating->state.depth_offset_mm) > 0.02 ||
                                       std::abs(scene.floating->state.spin_per_s) > 0.01);
  return scene.flame_on || lively || bobs || scene.bath_c > 60;
}

namespace {

/// A tube in the hand is drawn near, and its hole in the rack is empty.
bool is_away(const bench::SeenVessel& v, const Show& show) {
  return v.name == show.in_hand && v.name.starts_with("tube-") && v.place == bench::Place::Rack;
}

} // namespace

tl::expected<BenchView, std::string> BenchView::create(const std::filesystem::path& assets_folder) {
  auto impl = std::make_unique<Impl>();
  auto carpenter = Carpenter::create(assets_folder);
  if (!carpenter) {
    return tl::unexpected(carpenter.error());
  }
  impl->carpenter = std::move(*carpenter);
  auto glassware = VesselPainter::create(assets_folder);
  if (!glassware) {
    return tl::unexpected(glassware.error());
  }
  impl->glassware = std::move(*glassware);
  auto finish = load_program(assets_folder, "quad.vert", "finish.frag");
  auto flame = load_program(assets_folder, "quad.vert", "air.frag", "#define KIND 0\n");
  auto steam = load_program(assets_folder, "quad.vert", "air.frag", "#define KIND 1\n");
  for (const auto* program : {&finish, &flame, &steam}) {
    if (!*program) {
      return tl::unexpected(program->error());
    }
  }
  impl->finish = std::move(*finish);
  impl->air = {std::move(*flame), std::move(*steam)};
  GLuint array = 0;
  glGenVertexArrays(1, &array);
  impl->corners = ArrayName(array);
  return BenchView(std::move(impl));
}

BenchView::BenchView(std::unique_ptr<Impl> impl) : impl_(std::move(impl)) {}
BenchView::~BenchView() = default;
BenchView::BenchView(BenchView&&) noexcept = default;
BenchView& BenchView::operator=(BenchView&&) noexcept = default;

void BenchView::Impl::fit(int width, int height) {
  if (still.width == width && still.height == height) {
    return;
  }
  still = Target::make(width, height, GL_RGBA32F);
  frame = Target::make(width, height, GL_RGBA32F);
  finished = Target::make(width, height, GL_RGBA8);
  bench_key = 0;
  hand_key = 0;
  damage.forget();
}

void BenchView::Impl::draw_air(int kind, const Rect& at, double seconds, double strength,
                               const RoomLight& light) {
  Program& p = air[static_cast<std::size_t>(kind)];
  p.use();
  p.set("u_rect", at);
  p.set("u_target", static_cast<float>(frame.width), static_cast<float>(frame.height));
  p.set("u_time", static_cast<float>(std::fmod(seconds, 600.0)));
  p.set("u_strength", static_cast<float>(strength));
  p.set("u_room", light.room);
  glBindVertexArray(corners.get());
  glEnable(GL_BLEND);
  glBlendFunc(GL_ONE, GL_ONE_MINUS_SRC_ALPHA);
  draw_quad();
}

void BenchView::Impl::draw_still(const bench::Scene& scene, const Show& show, const SceneLayout& where,
                                 const RoomLight& light, bool lamp_lit) {
  Hash bench;
  hash_of(where.bench, bench);
  bench.add(lamp_lit ? 1 : 0, 1).add(std::round(scene.bath_c), 1);
  for (const auto& [key, text] : show.labels) {
    bench.add(key).add(text);
  }
  for (const auto& [key, r] : where.paper) {
    bench.add(key);
    hash_of(r, bench);
  }
  Hash hand;
  hash_of(where.hand, hand);
  const bench::SeenVessel* held = find(scene, show.in_hand);
  if (held != nullptr) {
    hand.add(static_cast<double>(held->looks.view.card), 1)
        .add(where.hand_scale_px_mm, 1e-3)
        .add(where.hand_bottom_px, 0.1)
        .add(lamp_lit ? 1 : 0, 1);
  }
  still.bind();
  if (bench.value() != bench_key) {
    bench_key = bench.value();
    damage.forget();
    still.scissor(where.bench);
    carpenter.draw_bench(scene, show, where, light, lamp_lit, still);
  }
  if (hand.value() != hand_key) {
    hand_key = hand.value();
    damage.forget();
    if (held != nullptr && !where.hand.empty()) {
      still.scissor(where.hand);
      carpenter.draw_backdrop(where.hand, hand_card(where.hand), held->looks.view.card,
                              where.hand_bottom_px -
                                  static_cast<float>(bare_card_mm(held->looks)) * where.hand_scale_px_mm,
                              where.hand_scale_px_mm, light, still);
    }
  }
  glDisable(GL_SCISSOR_TEST);
}

void BenchView::Impl::add_vessels(std::vector<Item>& list, const bench::Scene& scene, const Show& show,
                                  const SceneLayout& where, const RoomLight& light, bool tubes) {
  for (const bench::SeenVessel& v : scene.vessels) {
    const auto found = where.vessels.find(v.name);
    const bool racked =
        v.name.starts_with("tube-") && v.place != bench::Place::Flame && v.place != bench::Place::Bath;
    if (found == where.vessels.end() || v.place == bench::Place::Hand || is_away(v, show) ||
        racked != tubes) {
      continue;
    }
    VesselPlace place;
    const Rect& r = found->second;
    place.scale = r.w / static_cast<float>(v.looks.inner_diameter_mm + 2 * v.looks.wall_mm);
    place.foot_x = r.x + r.w / 2;
    place.foot_y = r.y + r.h - static_cast<float>(v.looks.wall_mm) * place.scale;
    place.seconds = show.boil_seconds;
    const bool floating = scene.floating && scene.floating->vessel == v.name;
    Rect reach = VesselPainter::reach(v.looks, place);
    if (floating) {
      reach.y -= 60 * place.scale;
      reach.h += 60 * place.scale;
    }
    Hash h;
    h.mix(look_hash(v.looks)).add(r.x, 0.1).add(r.y, 0.1).mix(float_hash(scene, v.name, 0));
    if (lively(v.looks)) {
      h.add(show.boil_seconds, 1e-4);
    }
    const bench::SeenFloat* afloat = floating ? &*scene.floating : nullptr;
    list.push_back({v.name, reach, h.value(), [this, &v, place, &light, afloat, &where] {
                      glassware.draw(v.name, v.looks, place, light, frame, still.texture.get(),
                                     carpenter.print(), afloat, 0);
                      if (v.place == bench::Place::Flame) {
                        const Rect glass = where.vessels.at(v.name);
                        carpenter.draw(Furniture::Plank, clamp_of(glass), {6.2F, 0.2F, 0, 0}, light, frame);
                      }
                      const auto paper = where.paper.find(v.name);
                      if (paper != where.paper.end() && v.name == "specimen") {
                        carpenter.draw(Furniture::Paper, paper->second, {1, 0, 0, 0}, light, frame);
                        const Rect glass = where.vessels.at(v.name);
                        carpenter.draw(Furniture::Lid,
                                       {glass.x - glass.w * 0.05F, glass.y - glass.h * 0.06F, glass.w * 1.1F,
                                        glass.h * 0.17F},
                                       {}, light, frame);
                      }
                    }});
    if (v.place == bench::Place::Flame) {
      list.back().touches = joined(reach, clamp_of(r));
    }
    if (v.name == "specimen") {
      list.back().touches = grown(reach, r.h * 0.07F);
    }
  }
}

void BenchView::Impl::add_air(std::vector<Item>& list, const bench::Scene& scene, const Show& show,
                              const SceneLayout& where, const RoomLight& light) {
  const auto add = [&](const std::string& name, int kind, const Rect& at, double strength) {
    list.push_back(
        {name, at, Hash().add(show.seconds, 1e-4).add(strength, 0.01).value(),
         [this, kind, at, strength, &show, &light] { draw_air(kind, at, show.seconds, strength, light); }});
  };
  list.push_back({"bath front", where.bath, 1, [this, &where, &light] {
                    carpenter.draw(Furniture::Bath, where.bath, {1, 0, 0, 0}, light, frame);
                  }});
  if (scene.bath_c > 60) {
    const Rect above{where.bath.x, where.bath.y - where.bath.h * 0.7F, where.bath.w, where.bath.h};
    add("bath steam", 1, above, std::clamp((scene.bath_c - 60) / 45, 0.0, 0.8));
  }
  if (scene.flame_on) {
    add("flame", 0, {where.flame.x, where.flame.y, where.flame.w, where.burner.y - where.flame.y + 1}, 1);
  }
  for (const bench::SeenVessel& v : scene.vessels) {
    const auto found = where.vessels.find(v.name);
    const bool here = v.place != bench::Place::Hand && !is_away(v, show);
    if (v.looks.steam > 0.02 && here && found != where.vessels.end()) {
      const Rect& r = found->second;
      add("steam of " + v.name, 1, {r.x - r.w * 0.9F, r.y - r.w * 4, r.w * 2.8F, r.w * 4.2F}, v.looks.steam);
    }
  }
}

void BenchView::Impl::add_hand(std::vector<Item>& list, const bench::Scene& scene, const Show& show,
                               const SceneLayout& where, const RoomLight& light) {
  const bench::SeenVessel* held = find(scene, show.in_hand);
  if (held == nullptr || where.hand.empty()) {
    return;
  }
  VesselPlace place;
  place.scale = where.hand_scale_px_mm;
  place.foot_x = where.hand.x + where.hand.w / 2;
  place.foot_y = where.hand_bottom_px;
  place.own_card = true;
  place.card = hand_card(where.hand);
  place.seconds = show.boil_seconds;
  const bool floating = scene.floating && scene.floating->vessel == held->name;
  Hash h;
  h.mix(look_hash(held->looks)).add(place.scale, 1e-3).add(place.foot_y, 0.1);
  h.mix(float_hash(scene, held->name, show.eye_mm)).add(floating ? show.eye_mm : 0, 0.01);
  if (lively(held->looks)) {
    h.add(show.boil_seconds, 1e-4);
  }
  const bench::SeenFloat* afloat = floating ? &*scene.floating : nullptr;
  const Rect reach = floating ? where.hand : VesselPainter::reach(held->looks, place);
  list.push_back({"hand", reach, h.value(), [this, held, place, &light, afloat, &show, &where] {
                    glassware.draw("hand:" + held->name, held->looks, place, light, frame,
                                   still.texture.get(), carpenter.print(), afloat, show.eye_mm);
                  }});
  const Rect steam = hand_steam(where.hand_vessel);
  if (held->looks.steam > 0.02 && overlap(steam, where.hand)) {
    list.push_back({"hand steam", steam, Hash().add(show.boil_seconds, 1e-4).value(),
                    [this, held, steam, &light, &show] {
                      draw_air(1, steam, show.boil_seconds, held->looks.steam, light);
                    }});
  }
}

std::vector<Item> BenchView::Impl::items(const bench::Scene& scene, const Show& show,
                                         const SceneLayout& where, const RoomLight& light) {
  std::vector<Item> list;
  list.push_back({"bench", where.bench, bench_key, [] {}});
  if (!where.hand.empty()) {
    list.push_back({"backdrop", where.hand, hand_key, [] {}}); // Already in the still picture.
  }
  add_vessels(list, scene, show, where, light, true);
  list.push_back({"rack front", grown(where.rack, 2), 1,
                  [this, &where, &light] { carpenter.draw_rack_front(where, light, frame); }});
  add_vessels(list, scene, show, where, light, false);
  add_papers(list, scene, where, light);
  add_air(list, scene, show, where, light);
  Rect marked;
  for (const auto& [places, before] : {std::pair{&where.vessels, ""}, std::pair{&where.reagents, "shelf:"}}) {
    for (const auto& [name, r] : *places) {
      marked = show.marked == before + name ? r : marked;
    }
  }
  marked = show.marked == "burner" ? joined(where.burner, where.flame)
           : show.marked == "bath" ? where.bath
                                   : marked;
  if (!marked.empty()) {
    const Rect round = grown(marked, 9);
    list.push_back({"mark", round, Hash().add(show.marked).value(),
                    [this, round, &light] { carpenter.draw(Furniture::Mark, round, {}, light, frame); }});
  }
  add_hand(list, scene, show, where, light);
  return list;
}

void BenchView::Impl::finish_part(const Target& from, const Target& to, const Rect& part) {
  to.bind();
  to.scissor(part);
  glDisable(GL_BLEND);
  finish.use();
  finish.set("u_rect", part);
  finish.set("u_target", static_cast<float>(to.width), static_cast<float>(to.height));
  finish.set("u_light", 0);
  bind_texture(0, from.texture.get());
  glBindVertexArray(corners.get());
  draw_quad();
}

void BenchView::draw(const bench::Scene& scene, const Show& show, const SceneLayout& placed,
                     int target_height) {
  Impl& v = *impl_;
  GLint bound = 0;
  glGetIntegerv(GL_DRAW_FRAMEBUFFER_BINDING, &bound);
  const int width = static_cast<int>(placed.area.w);
  const int height = static_cast<int>(placed.area.h);
  if (width < 8 || height < 8) {
    return;
  }
  const SceneLayout where = at_origin(placed);
  const optics::Lamp lamp = lamp_of(scene, show);
  const RoomLight light = RoomLight::of(lamp);
  v.fit(width, height);
  glDisable(GL_DEPTH_TEST);
  glDisable(GL_CULL_FACE);
  v.draw_still(scene, show, where, light, lamp == optics::Lamp::Indoor);
  const std::vector<Item> list = v.items(scene, show, where, light);
  for (const Rect& part : v.damage.since_last(list, where.area)) {
    v.frame.copy_from(v.still, part);
    v.frame.bind();
    for (const Item& item : list) {
      if (overlap(item.touches, part)) {
        // The large view is cut at its own edge and the bench at its own, so that neither spills into the
        // other.
        const Rect& room = item.name.starts_with("hand") ? where.hand : where.bench;
        Rect inside = part;
        inside.x = std::max(part.x, room.x);
        inside.w = std::min(part.x + part.w, room.x + room.w) - inside.x;
        if (inside.w <= 0) {
          continue;
        }
        v.frame.scissor(inside);
        item.draw();
      }
    }
    v.finish_part(v.frame, v.finished, part);
  }
  glDisable(GL_SCISSOR_TEST);
  glDisable(GL_BLEND);
  glBindFramebuffer(GL_READ_FRAMEBUFFER, v.finished.framebuffer.get());
  glBindFramebuffer(GL_DRAW_FRAMEBUFFER, static_cast<GLuint>(bound));
  const int left = static_cast<int>(placed.area.x);
  const int low = target_height - static_cast<int>(placed.area.y) - height;
  glBlitFramebuffer(0, 0, width, height, left, low, left + width, low + height, GL_COLOR_BUFFER_BIT,
                    GL_NEAREST);
  glBindFramebuffer(GL_FRAMEBUFFER, static_cast<GLuint>(bound));
}

} // namespace matula::render
