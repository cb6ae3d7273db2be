#include "sim/bench/measure.hpp"

#include "sim/appearance/extinction.hpp"
#include "sim/appearance/optics_tables.hpp"
#include "sim/bench/chance.hpp"
#include "sim/bench/life.hpp"
#include "sim/bench/pour.hpp"
#include "sim/bench/words.hpp"
#include "sim/column/layers.hpp"
#include "sim/matter/refraction.hpp"

#include <algorithm>
#include <cmath>
#include <numbers>

namespace matula::bench {

namespace {

constexpr double sodium_nm = 589;

/// The film on the prism: a drop, with what was left of the last one.
matter::Mixture new_film(const State& state, const Setup& setup, matter::Mixture drop, bool wiped) {
  const instrument::Refractometer& r = setup.refractometer;
  matter::Mixture film = std::move(drop);
  if (!wiped && state.prism_film.volume_ml > 0) {
    (void)matter::draw(film, r.kept_share * film.volume_ml);
    matter::Mixture old = state.prism_film;
    matter::merge(film, matter::draw(old, r.kept_share * r.film_ml));
  }
  film.temperature_c = setup.room_c; // a thin film takes on the prism's temperature at once
  return film;
}

Reading edge_in_words(const Setup& setup, const instrument::ShadowEdge& edge, double draw) {
  const instrument::Refractometer& r = setup.refractometer;
  Reading reading;
  reading.instrument = "refractometer";
  reading.spread = edge.spread;
  reading.off_scale = edge.beyond_end;
  const double half_division = r.division / 2;
  const double guess = edge.reading + (draw - 0.5) * edge.spread;
  const double at = edge.beyond_end ? r.scale_end : guess;
  reading.value = std::round(at / half_division) * half_division;
  if (edge.beyond_end) {
    reading.words = "The shadow lies beyond the end of the scale: dilute, and say so.";
  } else if (edge.spread > 2 * r.division) {
    reading.words = "The edge is blurred: a cloudy liquid is spun or filtered first.";
  } else {
    reading.words = "The edge is sharp.";
  }
  return reading;
}

std::string cannot_measure(const Setup& setup, const Measure& action, const Vessel& vessel) {
  const instrument::Photometer& p = setup.photometer;
  if (action.vessel.rfind("tube-", 0) != 0) {
    return "The photometer takes test tubes.";
  }
  if (!(action.wavelength_nm >= p.lowest_nm && action.wavelength_nm <= p.highest_nm)) {
    return "The photometer goes from " + std::to_string(std::lround(p.lowest_nm)) + " to " +
           std::to_string(std::lround(p.highest_nm)) + " nm.";
  }
  if (vessel.column.shape.level_mm(vessel.column.volume_ml()) < p.beam_to_mm) {
    return "Too little liquid in " + spoken(action.vessel) + ": the beam would pass above it.";
  }
  if (vessel.place != Place::Rack && vessel.place != Place::Hand) {
    return "Let " + spoken(action.vessel) + " out of the heat first.";
  }
  return "";
}

} // namespace

Outcome refract(State& state, const Setup& setup, const Refract& action) {
  Vessel* vessel = find(state, action.vessel);
  if (vessel == nullptr) {
    return refused(no_such_vessel(action.vessel));
  }
  const instrument::Refractometer& r = setup.refractometer;
  if (const std::string why = nothing_to_pour(state, action.vessel, *vessel, r.film_ml); !why.empty()) {
    return refused(why);
  }
  const matter::Catalogue& catalogue = *setup.chemistry->catalogue;
  Outcome outcome;
  outcome.caution = touch(state, *vessel, action.vessel);
  catch_up(state, setup, action.vessel, *vessel);
  matter::Mixture drop = column::draw_out(vessel->column, r.film_ml, catalogue);
  disturbed(state, setup, *vessel);
  state.prism_film = new_film(state, setup, std::move(drop), action.wiped);
  const double index = matter::refractive_index(state.prism_film, catalogue);
  const double extinction =
      appearance::extinction_per_mm(state.prism_film, catalogue, setup.optics->scatter, sodium_nm, 1);
  const instrument::ShadowEdge edge = instrument::read_edge(r, index, setup.room_c, extinction);
  if (edge.contrast < r.lost_contrast) {
    Reading nothing;
    nothing.instrument = "refractometer";
    nothing.off_scale = true;
    nothing.words = "No edge is to be seen: too cloudy. Spin or filter the liquid first.";
    outcome.reading = nothing;
    return outcome;
  }
  const double draw =
      chance(setup.seed, Purpose::Instrument, hash_name(action.vessel), state.random_counter++);
  outcome.reading = edge_in_words(setup, edge, draw);
  return outcome;
}

double beam_extinction(const Setup& setup, const column::Column& column, double wavelength_nm) {
  const instrument::Photometer& p = setup.photometer;
  const auto loss = [&](const matter::Mixture& part) {
    return appearance::extinction_per_mm(part, *setup.chemistry->catalogue, setup.optics->scatter,
                                         wavelength_nm, p.acceptance_deg) *
           column.shape.inner_diameter_mm / std::numbers::ln10;
  };
  // Light that passes adds up over the height of the beam, not what is lost.
  double passed = 0;
  double seen_mm = 0;
  const auto add = [&](const matter::Mixture& part, double from_mm, double to_mm) {
    const double overlap = std::min(to_mm, p.beam_to_mm) - std::max(from_mm, p.beam_from_mm);
    if (overlap > 0) {
      passed += overlap * std::pow(10.0, -loss(part));
      seen_mm += overlap;
    }
  };
  add(column.sediment, 0, column.shape.level_mm(column.sediment.volume_ml));
  const std::vector<column::Extent> heights = column::extents(column);
  for (std::size_t i = 0; i < column.layers.size(); ++i) {
    add(column.layers[i], heights[i].from_mm, heights[i].to_mm);
  }
  constexpr double darkest = 1e-12;
  return seen_mm > 0 ? -std::log10(std::max(passed / seen_mm, darkest)) : 0.0;
}

Outcome measure(State& state, const Setup& setup, const Measure& action) {
  Vessel* vessel = find(state, action.vessel);
  if (vessel == nullptr) {
    return refused(no_such_vessel(action.vessel));
  }
  if (const std::string why = cannot_measure(setup, action, *vessel); !why.empty()) {
    return refused(why);
  }
  Outcome outcome;
  outcome.caution = touch(state, *vessel, action.vessel);
  catch_up(state, setup, action.vessel, *vessel);
  const double wavelength_nm = std::round(action.wavelength_nm);
  const double extinction = beam_extinction(setup, vessel->column, wavelength_nm);
  if (action.blank) {
    state.photometer_zero[wavelength_nm] = extinction;
  }
  const auto zero = state.photometer_zero.find(wavelength_nm);
  const double blank = zero == state.photometer_zero.end() ? 0 : zero->second;
  const double draw =
      chance(setup.seed, Purpose::Instrument, hash_name(action.vessel), state.random_counter++);
  const instrument::Display display = instrument::show(setup.photometer, extinction, blank, draw);
  Reading reading;
  reading.instrument = "photometer";
  reading.value = display.absorbance;
  reading.spread = setup.photometer.flicker;
  reading.off_scale = display.over;
  reading.words = display.over ? "Hardly any light comes through: the figure means only 'more'."
                  : zero == state.photometer_zero.end() ? "No blank was set at this wavelength: against air."
                  : action.blank                        ? "Set to zero on this blank."
                                                        : "Against the blank.";
  outcome.reading = reading;
  return outcome;
}

} // namespace matula::bench
