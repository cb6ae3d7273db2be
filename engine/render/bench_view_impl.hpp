#pragma once

#include "engine/render/bench_view.hpp"
#include "engine/render/damage.hpp"
#include "engine/render/furniture.hpp"
#include "engine/render/vessel_painter.hpp"

#include <array>
#include <functional>
#include <map>
#include <vector>

namespace matula::render {

/// What a view of the bench keeps on the graphics card. For this room only.
struct BenchView::Impl {
  Carpenter carpenter;
  VesselPainter glassware;
  Program finish;
  std::array<Program, 2> air; ///< Flame, steam.
  ArrayName corners;
  Target still;    ///< What never moves, as light.
  Target frame;    ///< With everything in it, as light.
  Target finished; ///< Eight bits.
  std::uint64_t bench_key = 0;
  std::uint64_t hand_key = 0;
  Damage damage;
  std::map<int, Target> slots;

  /// Runs `paint` into the slot's texture, as light first; leaves the framebuffer bound that was.
  GLuint into_slot(int slot, int width, int height, const std::function<void(const Target& light)>& paint);
  /// One vessel against its own card in its room; the float may be null.
  void paint_one(const Rect& room, const appearance::Appearance& looks, const bench::SeenFloat* floating,
                 const Target& target);
  void fit(int width, int height);
  void draw_air(int kind, const Rect& at, double seconds, double strength, const RoomLight& light);
  void draw_still(const bench::Scene& scene, const Show& show, const SceneLayout& where,
                  const RoomLight& light, bool lamp_lit);
  std::vector<Item> items(const bench::Scene& scene, const Show& show, const SceneLayout& where,
                          const RoomLight& light);
  void add_vessels(std::vector<Item>& list, const bench::Scene& scene, const Show& show,
                   const SceneLayout& where, const RoomLight& light, bool tubes);
  void add_hand(std::vector<Item>& list, const bench::Scene& scene, const Show& show,
                const SceneLayout& where, const RoomLight& light);
  void add_papers(std::vector<Item>& list, const bench::Scene& scene, const SceneLayout& where,
                  const RoomLight& light);
  void add_air(std::vector<Item>& list, const bench::Scene& scene, const Show& show, const SceneLayout& where,
               const RoomLight& light);
  void finish_part(const Target& from, const Target& to, const Rect& part);
};

} // namespace matula::render
