#include "engine/classroom/rescore_run.hpp"

#include "engine/records/trouble.hpp"
#include "engine/strict/file.hpp"

#include <fmt/format.h>

namespace matula::classroom {
namespace {

/// A marker by the rules of another folder of assets, with what it stands on.
class OtherRules {
public:
  explicit OtherRules(const std::filesystem::path& folder) {
    auto world = assets::load(folder);
    if (!world) {
      throw records::Trouble(scenario::to_text(world.error()));
    }
    auto standards = scoring::load_standards(folder);
    if (!standards) {
      throw records::Trouble(scenario::to_text(standards.error()));
    }
    world_ = std::move(*world);
    marker_ = std::make_unique<records::Marker>(*world_, std::move(*standards), folder);
  }
  [[nodiscard]] records::Marker& marker() { return *marker_; }

private:
  std::unique_ptr<const assets::World> world_;
  std::unique_ptr<records::Marker> marker_;
};

records::RescoreWishes wishes_of(const RescoreOrder& order) {
  records::RescoreWishes wishes{order.scope, "", order.threads, order.now_s, order.on_trial};
  if (!order.scenario.empty()) {
    if (!strict::read_text(order.scenario, wishes.other_scenario)) {
      throw records::Trouble(order.scenario.string() + " cannot be read.");
    }
    if (wishes.scope.exercise.empty()) {
      wishes.scope.exercise = order.scenario.stem().string();
    }
  }
  return wishes;
}

} // namespace

RescoreEnd mark_anew(const std::string& address, const AskMarker& marker, const RescoreOrder& order,
                     Work& work) {
  RescoreEnd end;
  end.on_trial = order.on_trial;
  static_cast<WorkEnd&>(end) = work.run([&] {
    work.begin(order.on_trial ? "sittings marked on trial" : "sittings marked anew");
    const auto wishes = wishes_of(order);
    records::Store store(address);
    std::unique_ptr<OtherRules> other;
    if (!order.rules.empty()) {
      other = std::make_unique<OtherRules>(order.rules);
    }
    records::rescore(store, other ? other->marker() : marker(), wishes, work.progress(), end.sum);
    if (end.sum.sittings == 0 && end.sum.refused.empty()) {
      throw records::Trouble(wishes.scope.exercise.empty()
                                 ? "There is no sitting to be marked anew."
                                 : "There is no sitting of the case \"" + wishes.scope.exercise + "\" here.");
    }
  });
  return end;
}

std::string RescoreEnd::words() const {
  if (!trouble.empty()) {
    return trouble;
  }
  std::string words = stopped ? fmt::format("Stopped after {} of {}. ", done, total) : "";
  words += fmt::format("{} sittings marked anew: {} passed before, {} pass now; {} came out otherwise, {} as "
                       "before, {} could not be marked. ",
                       sum.sittings, sum.passed_before, sum.passed_now, sum.changed.size(), sum.as_before,
                       sum.refused.size());
  if (on_trial) {
    return words + "This was a trial: nothing was stored.";
  }
  return words + (stopped ? "Those that were reached count by the new marks, the rest by those from before; "
                            "the marks from before are kept."
                          : "Both marks of each are kept; the new ones count.");
}

} // namespace matula::classroom
