#include "engine/render/bench_geometry.hpp"
#include "engine/render/bench_view_impl.hpp"
#include "engine/render/hash.hpp"

#include <algorithm>

namespace matula::render {

namespace {

constexpr std::array<float, 4> k_strip_white{0.87F, 0.87F, 0.86F, 0.35F};

std::array<float, 4> light_of(const optics::Xyz& colour) {
  const optics::LinearRgb rgb = optics::to_display(colour);
  return {static_cast<float>(rgb.r), static_cast<float>(rgb.g), static_cast<float>(rgb.b), 0.15F};
}

/// Where pad `i` of `count` lies on its strip.
Rect pad_rect(const Rect& strip, std::size_t i, std::size_t count) {
  const float pitch = strip.w / static_cast<float>(count);
  const float side = std::min(pitch * 0.76F, strip.h * 0.84F);
  return {strip.x + pitch * (static_cast<float>(i) + 0.5F) - side / 2, strip.y + (strip.h - side) / 2, side,
          side};
}

} // namespace

void BenchView::Impl::add_papers(std::vector<Item>& list, const bench::Scene& scene, const SceneLayout& where,
                                 const RoomLight& light) {
  for (const bench::SeenPaper& paper : scene.papers) {
    const auto found = where.test_papers.find(paper.name);
    if (found == where.test_papers.end()) {
      continue;
    }
    const Rect strip = found->second;
    Hash h;
    hash_of(strip, h);
    for (const bench::SeenPad& pad : paper.pads) {
      h.add(pad.colour.x, 1e-3).add(pad.colour.y, 1e-3).add(pad.colour.z, 1e-3);
    }
    list.push_back({"paper " + paper.name, grown(strip, 3), h.value(), [this, &paper, strip, &light] {
                      carpenter.draw(Furniture::Shadow, grown(strip, 3), {0.25F, 0, 0, 0}, light, frame);
                      carpenter.draw(Furniture::Swatch, strip, k_strip_white, light, frame);
                      for (std::size_t i = 0; i < paper.pads.size(); ++i) {
                        carpenter.draw(Furniture::Swatch, pad_rect(strip, i, paper.pads.size()),
                                       light_of(paper.pads[i].colour), light, frame);
                      }
                    }});
  }
}

} // namespace matula::render
