#include "engine/attribution/work.hpp"

#include <algorithm>

namespace matula::attribution {
namespace {

/// Walks a sitting backwards and keeps what bears on a tube: as more vessels turn out to have fed it, they
/// are followed too.
class Backwards {
public:
  explicit Backwards(std::string vessel) { followed_.insert(std::move(vessel)); }

  [[nodiscard]] const std::set<std::string>& ever() const { return ever_; }

  bool bears(const Heard& heard) {
    const auto* action = std::get_if<bench::Action>(&heard.event.what);
    if (action == nullptr || !heard.done) {
      return false;
    }
    paper_ = heard.new_paper;
    const bool kept = std::visit([this](const auto& a) { return on(a); }, *action);
    ever_.insert(followed_.begin(), followed_.end());
    return kept;
  }

private:
  [[nodiscard]] bool follows(const std::string& name) const { return followed_.count(name) > 0; }
  void follow(const std::string& name) {
    if (name != "specimen" && name != "water") {
      followed_.insert(name);
    }
  }

  bool on(const bench::Pour& a) {
    if (follows(a.to)) {
      follow(a.from);
      return true;
    }
    return follows(a.from) || a.from == "specimen"; // What is left in the cup depends on what went.
  }
  bool on(const bench::Dispense& a) const { return follows(a.to) || a.to == "specimen"; }
  bool on(const bench::Mix& a) const { return follows(a.vessel) || a.vessel == "specimen"; }
  bool on(const bench::Move& a) const { return follows(a.vessel) || a.vessel == "specimen"; }
  static bool on(const bench::LightFlame& /*a*/) { return true; }
  static bool on(const bench::SetBath& /*a*/) { return true; }
  static bool on(const bench::Hood& /*a*/) { return true; }
  bool on(const bench::Float& a) const { return follows(a.vessel); }
  // Where the float is not in this vessel the replay refuses them, which changes nothing.
  static bool on(const bench::LiftFloat& /*a*/) { return true; }
  static bool on(const bench::SpinFloat& /*a*/) { return true; }
  static bool on(const bench::ClearBubbles& /*a*/) { return true; }
  bool on(const bench::Discard& a) {
    const bool kept = follows(a.vessel);
    followed_.erase(a.vessel); // What was in it before is gone.
    return kept;
  }
  bool on(const bench::Centrifuge& a) {
    const bool kept = std::any_of(a.vessels.begin(), a.vessels.end(),
                                  [this](const std::string& name) { return follows(name); });
    if (kept) {
      std::for_each(a.vessels.begin(), a.vessels.end(), [this](const std::string& name) { follow(name); });
    }
    return kept;
  }
  bool on(const bench::Filter& a) {
    const bool kept = filter_wanted_ || follows(a.to) || follows(a.from);
    if (filter_wanted_ || follows(a.to)) {
      follow(a.from);
    }
    filter_wanted_ = false;
    return kept;
  }
  bool on(const bench::SprinkleSulphur& a) const { return follows(a.vessel); }
  bool on(const bench::Tap& a) const { return follows(a.vessel); }
  bool on(const bench::DipPaper& a) {
    if (!follows(paper_)) {
      return false;
    }
    follow(a.vessel);
    return true;
  }
  bool on(const bench::BlotPaper& a) const { return follows(a.paper); }
  bool on(const bench::DropOn& a) const { return follows(a.paper); }
  bool on(const bench::LayPaper& /*a*/) {
    filter_wanted_ = follows(paper_);
    return filter_wanted_;
  }
  /// Looking, smelling, measuring and dressing change nothing in a vessel.
  template <typename A> static bool on(const A& /*a*/) { return false; }

  std::set<std::string> followed_;
  std::set<std::string> ever_;
  std::string paper_;
  bool filter_wanted_ = false;
};

} // namespace

Work work_on(const std::vector<Heard>& sitting, std::size_t upto, double read_at_s,
             const bench::VesselName& vessel) {
  Backwards backwards(vessel);
  std::vector<const Heard*> kept;
  for (std::size_t i = std::min(upto, sitting.size()); i-- > 0;) {
    if (backwards.bears(sitting[i])) {
      kept.push_back(&sitting[i]);
    }
  }
  Work work;
  work.vessel = vessel;
  work.vessels = backwards.ever();
  work.vessels.insert(vessel);
  double now_s = 0;
  for (auto one = kept.rbegin(); one != kept.rend(); ++one) {
    const Heard& heard = **one;
    work.steps.push_back({std::max(0.0, heard.start_s - now_s), std::get<bench::Action>(heard.event.what),
                          heard.random_counter, heard.papers_used});
    now_s = std::max(now_s, heard.end_s);
  }
  work.last_wait_s = std::max(0.0, read_at_s - now_s);
  return work;
}

} // namespace matula::attribution
