#include "engine/scoring/last_use.hpp"

#include "engine/sitting/aside.hpp"

#include <map>

namespace matula::scoring {

namespace {

/// What an entry makes the marks look at, whatever the log says of tubes.
std::vector<bench::VesselName> looked_at_for(const sitting::Record& record) {
  const bool look = record.item == "colour" || record.item == "clarity" || record.item == "odour";
  return look ? std::vector<bench::VesselName>{"specimen", "jar"} : std::vector<bench::VesselName>{};
}

std::vector<bench::VesselName> wanted_by(const sitting::Event& event) {
  if (const auto* action = std::get_if<bench::Action>(&event.what)) {
    return sitting::named_in(*action);
  }
  const auto* record = std::get_if<sitting::Record>(&event.what);
  return record != nullptr ? looked_at_for(*record) : std::vector<bench::VesselName>{};
}

} // namespace

LastUse::LastUse(const std::vector<sitting::Event>& log) : ends_(log.size()) {
  std::map<bench::VesselName, std::size_t> last;
  for (std::size_t i = 0; i < log.size(); ++i) {
    for (const bench::VesselName& vessel : wanted_by(log[i])) {
      last[vessel] = i;
    }
  }
  for (const auto& [vessel, at] : last) {
    ends_[at].push_back(vessel);
  }
}

void LastUse::lay_aside(sitting::Session& session, std::size_t done) {
  done_with_.insert(ends_[done].begin(), ends_[done].end());
  for (const bench::VesselName& vessel : done_with_) {
    session.lay_aside(vessel); // Again after every event: it may have been too hot, or taken up.
  }
}

} // namespace matula::scoring
