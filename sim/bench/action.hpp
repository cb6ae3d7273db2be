#pragma once

#include "sim/appearance/appearance.hpp"

#include <string>
#include <variant>
#include <vector>

namespace matula::bench {

/// Vessels are named "specimen", "jar" (for the urinometer), "tube-1" ... "tube-12", "water" (distilled).
using VesselName = std::string;

enum class Place { Rack, Hand, Flame, Bath };
enum class Manner { Swirl, Invert };

/// Pours liquid from one vessel into another.
struct Pour {
  VesselName from;
  VesselName to;
  double volume_ml = 0;
  bool gently = false; ///< Down the wall, so that it forms its own layer.
};
/// Adds from a bottle on the shelf.
struct Dispense {
  std::string reagent;
  VesselName to;
  double volume_ml = 0;
  bool gently = false;
};
/// Mixes for `seconds` of bench time.
struct Mix {
  VesselName vessel;
  Manner manner = Manner::Swirl;
  double seconds = 5;
};
/// Moves a vessel. In the flame, `height` 0..1 is the part of the liquid column the flame plays on, and
/// `towards_person` says where the mouth points.
struct Move {
  VesselName vessel;
  Place place = Place::Rack;
  double height = 0.85;
  bool towards_person = false;
  bool moving = true; ///< Kept in motion in the flame; a tube held still bumps.
};
struct LightFlame {
  bool on = true;
};
struct SetBath {
  double temperature_c = 100;
  double warming_c_per_min = 0; ///< 0: as fast as the hot plate can.
};
/// Lowers the urinometer into a vessel; `wiped` dry and clean, `spun` so that it stands free of the wall.
struct Float {
  VesselName vessel;
  bool wiped = true;
  bool spun = true;
};
struct LiftFloat {};
struct SpinFloat {};
struct ClearBubbles {}; ///< Raises, wipes and lowers the float again.
struct Thermometer {
  VesselName vessel;
};
struct Smell {
  VesselName vessel;
};
/// Looks at a vessel; eye_mm is the eye's height above the liquid's surface when reading a scale.
struct Look {
  VesselName vessel;
  appearance::View view;
  double eye_mm = 0;
};
struct Protect {
  bool gloves = true;
  bool goggles = true;
};
/// Where waste goes. `Waste` is one vessel for all: nobody sorted it.
enum class Bin { Waste, Sink, Acid, HeavyMetal, Solvent, Nitroprusside, Biohazard };
struct Discard {
  VesselName vessel;
  Bin bin = Bin::Waste;
};
/// Puts a drop on the refractometer's prism; `wiped` clean and dry before.
struct Refract {
  VesselName vessel;
  bool wiped = true;
};
/// Stands a vessel in the photometer; a blank sets zero at its wavelength.
struct Measure {
  VesselName vessel;
  double wavelength_nm = 620;
  bool blank = false;
};
/// Spins tubes, each opposite the next in the list, at `rcf` times their weight.
struct Centrifuge {
  std::vector<VesselName> vessels;
  double rcf = 400;
  double seconds = 300;
};
/// Pours through paper; what it holds back lies on the paper afterwards.
struct Filter {
  VesselName from;
  VesselName to;
  double volume_ml = 0;
  bool fresh_paper = true;
};
/// Strews a pinch of flowers of sulphur on the surface.
struct SprinkleSulphur {
  VesselName vessel;
};
/// Taps the glass with a finger.
struct Tap {
  VesselName vessel;
};
/// Works under the fume hood, or in the open room.
struct Hood {
  bool on = true;
};
/// Takes up what was spilled; with bleach, or with dry towels and soap.
struct WipeSpill {
  bool bleach = false;
};
/// Dips a fresh piece of test paper of a kind into a vessel; it then lies on the bench as "KIND-1", "KIND-2"
/// ...
struct DipPaper {
  std::string paper;
  VesselName vessel;
  double seconds = 1;
};
/// Draws the edge of a paper over absorbent tissue, so that nothing runs from pad to pad.
struct BlotPaper {
  std::string paper; ///< Name of the piece.
};
/// Holds a paper beside its reference card.
struct LookAtPaper {
  std::string paper;
};
/// Lets drops from a bottle fall on every pad of a paper.
struct DropOn {
  std::string paper;
  std::string reagent;
  double drops = 1;
};
struct DiscardPaper {
  std::string paper;
};
/// Spreads the paper last filtered through and presses it half dry; it then lies there as "filter-1" ...
struct LayPaper {};
/// Lets bench time pass.
struct Wait {
  double seconds = 0;
};

using Action = std::variant<Pour, Dispense, Mix, Move, LightFlame, SetBath, Float, LiftFloat, SpinFloat,
                            ClearBubbles, Thermometer, Smell, Look, Protect, Discard, Wait, Refract, Measure,
                            Centrifuge, Filter, SprinkleSulphur, Tap, Hood, WipeSpill, DipPaper, BlotPaper,
                            LookAtPaper, DropOn, DiscardPaper, LayPaper>;

} // namespace matula::bench
