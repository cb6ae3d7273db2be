#pragma once

#include "engine/sitting/event.hpp"
#include "sim/bench/outcome.hpp"

#include <map>
#include <string>

namespace matula::assets {
struct World;
}
namespace matula::scenario {
struct Scenario;
}
namespace matula::scoring {
struct Report;
}

namespace matula::classroom {

/// What things of one sitting are called.
class Names {
public:
  Names(const assets::World& world, const scenario::Scenario& scenario, const scoring::Report& report);

  [[nodiscard]] std::string reagent(const std::string& key) const;
  [[nodiscard]] std::string paper(const std::string& kind) const;
  [[nodiscard]] std::string item(const std::string& item) const; ///< "Protein by heat"
  /// What was written, a decision's key in its own words.
  [[nodiscard]] std::string value(const std::string& item, const std::string& value) const;

private:
  const assets::World& world_;
  std::map<std::string, std::string> items_;
  std::map<std::string, std::string> answers_; ///< By "decision.KEY=option".
};

/// "tube-3" to "tube 3".
[[nodiscard]] std::string vessel_in_words(const bench::VesselName& name);

/// What the student did, in the third person and without a subject.
[[nodiscard]] std::string in_words(const sitting::Event& event, const Names& names);

/// What the bench answered, in words; empty when there was nothing to say.
[[nodiscard]] std::string in_words(const bench::Outcome& outcome, const sitting::Event& event);

/// The vessel a line is about; empty for none.
[[nodiscard]] bench::VesselName vessel_of(const sitting::Event& event);

/// A line that only keeps the time.
[[nodiscard]] bool is_tick(const sitting::Event& event);

} // namespace matula::classroom
