#pragma once

#include "engine/render/gl.hpp"
#include "engine/render/light.hpp"
#include "sim/bench/scene.hpp"

#include <cstdint>
#include <filesystem>
#include <map>
#include <string>

namespace matula::render {

/// Where and against what a vessel is drawn.
struct VesselPlace {
  float foot_x = 0; ///< Pixel of the inside bottom on the axis.
  float foot_y = 0;
  float scale = 1; ///< Pixels a mm.
  bool own_card =
      false; ///< Against the card of its view; otherwise against what stands behind it in the picture.
  Rect card; ///< In pixels, with `own_card`.
  double seconds = 0;
};

/// Draws glass vessels and their contents from Appearance. Keeps the textures made from an appearance until
/// it changes.
class VesselPainter {
public:
  [[nodiscard]] static tl::expected<VesselPainter, std::string>
  create(const std::filesystem::path& assets_folder);

  /// Draws into `target` (bound, blending set up by this call). `behind` is the picture behind the vessel;
  /// `name` keys the cache.
  void draw(const std::string& name, const appearance::Appearance& looks, const VesselPlace& place,
            const RoomLight& light, const Target& target, GLuint behind, GLuint print,
            const bench::SeenFloat* floating, double eye_mm);

  /// All a vessel may touch, in pixels.
  [[nodiscard]] static Rect reach(const appearance::Appearance& looks, const VesselPlace& place);

private:
  struct Kept {
    std::uint64_t content = 0;
    float scale = 0;
    TextureName rows;
    int row_count = 0;
    float pitch_mm = 1;
    BufferName pieces;
    int piece_count = 0;
  };
  struct Paper {
    TextureName texture;
    std::uint64_t content = 0;
  };
  Kept& keep(const std::string& name, const appearance::Appearance& looks, const VesselPlace& place);
  void draw_glass(int pass, const Kept& kept, const appearance::Appearance& looks, const VesselPlace& place,
                  const RoomLight& light, const Target& target, GLuint behind, GLuint print);
  void draw_band(Program& program, const Rect& at, const Kept& kept, const appearance::Appearance& looks,
                 const VesselPlace& place, const RoomLight& light, const Target& target);
  /// The glass shader made for what a band shows; made when first needed.
  Program* glass_for(const std::string& defines);
  void draw_pieces(const Kept& kept, const VesselPlace& place, const Target& target);
  void draw_float(const Kept& kept, const appearance::Appearance& looks, const VesselPlace& place,
                  const RoomLight& light, const Target& target, const bench::SeenFloat& seen, double eye_mm);

  std::filesystem::path assets_folder_;
  std::map<std::string, Program> glass_;
  Program piece_;
  Program float_;
  ArrayName corners_;
  ArrayName piece_array_;
  std::map<std::string, Kept> kept_;
  Paper paper_;
};

} // namespace matula::render
