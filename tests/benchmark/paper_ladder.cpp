// Prints the pads' chemistry and colours over doses; run by hand while fitting.
#include "engine/assets/world.hpp"
#include "sim/matter/ph.hpp"
#include "sim/paper/card.hpp"
#include "sim/paper/pad_look.hpp"

#include <cstdio>

using namespace matula;

int main(int argc, char** argv) {
  const auto world = assets::load(assets::folder());
  if (!world) {
    std::puts(scenario::to_text(world.error()).c_str());
    return 1;
  }
  const assets::World& w = **world;
  for (const auto& kind : w.papers) {
    for (const auto& pad : kind.pads) {
      if (argc > 1 && pad.key != argv[1]) {
        continue;
      }
      std::printf("%s.%s\n", kind.key.c_str(), pad.key.c_str());
      optics::Lab last;
      for (const auto& level : pad.levels) {
        const auto liquid = specimen::make_liquid(level.specimen, w.catalogue);
        const auto p = paper::dipped_pad(pad, liquid, w.chemistry, 22, pad.read_at_s);
        const auto lab =
            optics::to_lab(paper::colour_of(paper::reflectance(p, pad, w.catalogue, w.optics.scatter),
                                            w.optics.colorimetry, optics::Lamp::Daylight),
                           optics::d65_white);
        std::printf("  %-9s %8g pH %.2f  L %5.1f a %6.1f b %6.1f  dE %.1f\n", level.word.c_str(), level.value,
                    matter::ph(p.inside, w.catalogue), lab.l, lab.a, lab.b, optics::ciede2000(lab, last));
        last = lab;
      }
    }
  }
}
