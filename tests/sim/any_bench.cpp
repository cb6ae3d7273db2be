#include "tests/sim/any_bench.hpp"

#include <algorithm>
#include <array>

namespace matula::tests {

namespace {

constexpr std::size_t least_steps = 4;
constexpr std::size_t more_steps = 7;
constexpr double tube_ml = 18;

std::string number(double value) {
  std::string words = std::to_string(value);
  return words.substr(0, words.find('.') + 4);
}

const std::vector<matter::Reagent>& bottles() {
  return any_world().catalogue.reagents;
}

matter::Mixture liquid_of(const specimen::Specimen& specimen) {
  return specimen::make_liquid(specimen, any_world().catalogue);
}

matter::Mixture sample(const matter::Mixture& liquid, double volume_ml) {
  matter::Mixture rest = liquid;
  return matter::draw(rest, volume_ml);
}

/// Two portions, each always well mixed.
class Portions {
public:
  explicit Portions(std::uint64_t seed) : dice_(seed), liquid_(liquid_of(any_specimen(dice_))) {
    for (Portion& portion : portions_) {
      portion.mixture = matter::empty_mixture(any_world().catalogue);
      portion.sums = conserved().of(portion.mixture);
    }
  }

  Played play() {
    const std::size_t count = least_steps + dice_.below(more_steps);
    for (std::size_t i = 0; i < count && played_.broken.empty(); ++i) {
      one_step();
      check();
    }
    if (played_.broken.empty()) {
      column::Column tube = column::empty_column(any_world().shapes.at("test_tube"), any_world().catalogue);
      column::pour_in(tube, portions_[0].mixture, false, any_world().catalogue);
      played_.broken = broken_looks(tube);
    }
    return played_;
  }

private:
  struct Portion {
    matter::Mixture mixture;
    std::vector<double> sums;
    Contents contents;
  };

  void one_step() {
    Portion& portion = portions_[dice_.below(portions_.size())];
    const double room_ml = tube_ml - portion.mixture.volume_ml;
    const double kind = dice_.between(0, 1);
    if (kind < 0.5 && room_ml > 0.1) {
      const std::size_t which = dice_.below(bottles().size());
      const matter::Mixture dose = any_dose(bottles()[which], room_ml, dice_);
      tell("add " + bottles()[which].key + " " + number(dose.volume_ml) + " mL");
      matter::merge(portion.mixture, dose);
      meet(portion.contents, which, played_.met);
    } else if (kind < 0.65 && room_ml > 0.1) {
      const double volume_ml = std::min(room_ml, dice_.log_between(0.1, 8));
      tell("add urine " + number(volume_ml) + " mL");
      matter::merge(portion.mixture, sample(liquid_, volume_ml));
    } else if (kind < 0.72) {
      exchange();
    }
    hold(portion);
  }

  void exchange() {
    Portion& to = portions_[0];
    Portion& from = portions_[1];
    const double volume_ml = std::min({from.mixture.volume_ml, tube_ml - to.mixture.volume_ml, 4.0});
    if (volume_ml <= 0) {
      return;
    }
    tell("pour " + number(volume_ml) + " mL across");
    matter::merge(to.mixture, matter::draw(from.mixture, volume_ml));
    for (const std::size_t reagent : std::set<std::size_t>(from.contents.reagents)) {
      meet(to.contents, reagent, played_.met);
    }
  }

  void hold(Portion& portion) {
    for (Portion& each : portions_) {
      each.sums = conserved().of(each.mixture);
    }
    if (portion.mixture.empty()) {
      return;
    }
    const double seconds = dice_.log_between(0.2, 300);
    if (dice_.yes(0.4)) {
      portion.mixture.temperature_c = dice_.between(4, 100);
    }
    const double shear_per_s = dice_.yes(0.3) ? 150 : 0.4;
    tell("hold " + number(seconds) + " s at " + number(portion.mixture.temperature_c) + " C");
    reaction::react(portion.mixture, any_world().chemistry, any_world().catalogue, seconds, shear_per_s);
  }

  void check() {
    for (const Portion& portion : portions_) {
      played_.broken = played_.broken.empty() ? broken_law(portion.mixture) : played_.broken;
      played_.broken =
          played_.broken.empty() ? broken_sums(portion.sums, portion.mixture, false) : played_.broken;
    }
  }

  void tell(std::string step) { played_.steps.push_back(std::move(step)); }

  Dice dice_;
  matter::Mixture liquid_;
  std::array<Portion, 2> portions_;
  Played played_;
};

/// One tube, with layers.
class Tube {
public:
  explicit Tube(std::uint64_t seed)
      : dice_(seed), liquid_(liquid_of(any_specimen(dice_))),
        tube_(column::empty_column(any_world().shapes.at("test_tube"), any_world().catalogue)) {}

  Played play() {
    const std::size_t count = least_steps + dice_.below(more_steps);
    for (std::size_t i = 0; i < count && played_.broken.empty(); ++i) {
      one_step();
      const std::vector<double> before = conserved().of(all());
      const double over_ml = tube_.boil_over_ml;
      live();
      check(before, tube_.boil_over_ml > over_ml);
    }
    if (played_.broken.empty()) {
      played_.broken = broken_looks(tube_);
    }
    return played_;
  }

private:
  [[nodiscard]] matter::Mixture all() const { return column::whole(tube_, any_world().catalogue); }

  void one_step() {
    const matter::Catalogue& catalogue = any_world().catalogue;
    const double room_ml = tube_ml - tube_.volume_ml();
    const double kind = dice_.between(0, 1);
    const bool gently = dice_.yes(0.3);
    if (kind < 0.55 && room_ml > 0.1) {
      const std::size_t which = dice_.below(bottles().size());
      const matter::Mixture dose = any_dose(bottles()[which], room_ml, dice_);
      tell("add " + bottles()[which].key + " " + number(dose.volume_ml) + " mL" + (gently ? " gently" : ""));
      if (bottles()[which].solvent.empty()) {
        column::pour_in(tube_, dose, gently, catalogue);
      } else {
        column::pour_in_heavy(tube_, dose, catalogue);
      }
      meet(contents_, which, played_.met);
    } else if (kind < 0.8 && room_ml > 0.1) {
      const double volume_ml = std::min(room_ml, dice_.log_between(0.2, 8));
      tell("add urine " + number(volume_ml) + " mL");
      column::pour_in(tube_, sample(liquid_, volume_ml), gently, catalogue);
    } else if (kind < 0.85) {
      tell("draw off 2 mL");
      (void)column::draw_out(tube_, 2, catalogue);
    }
  }

  void live() {
    column::Surroundings around;
    around.room_c = 22;
    const double kind = dice_.between(0, 1);
    double seconds = dice_.log_between(1, 120);
    if (kind < 0.3) {
      seconds = dice_.between(2, 8);
      around.inverting = true;
      around.shear_per_s = 150;
    } else if (kind < 0.5) {
      seconds = dice_.between(3, 25);
      around.flame_power_w = 45;
      around.flame_from_mm = dice_.between(0, 80);
      around.flame_to_mm = around.flame_from_mm + 25;
    } else if (kind < 0.6) {
      around.bath_c = dice_.between(40, 100);
    }
    tell("live " + number(seconds) + " s, flame " + number(around.flame_power_w) + " W, bath " +
         number(around.bath_c) + " C" + (around.inverting ? ", inverting" : ""));
    column::advance(tube_, any_world().chemistry, around, seconds);
  }

  void check(const std::vector<double>& before, bool lost) {
    const matter::Mixture now = all();
    played_.broken = broken_law(now);
    for (const matter::Mixture& layer : tube_.layers) {
      played_.broken = played_.broken.empty() ? broken_law(layer) : played_.broken;
    }
    played_.broken = played_.broken.empty() ? broken_law(tube_.sediment) : played_.broken;
    played_.broken = played_.broken.empty() ? broken_sums(before, now, lost) : played_.broken;
  }

  void tell(std::string step) { played_.steps.push_back(std::move(step)); }

  Dice dice_;
  matter::Mixture liquid_;
  column::Column tube_;
  Contents contents_;
  Played played_;
};

} // namespace

Played play_portions(std::uint64_t seed) {
  return Portions(seed).play();
}

Played play_columns(std::uint64_t seed) {
  return Tube(seed).play();
}

} // namespace matula::tests
