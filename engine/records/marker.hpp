#pragma once

#include "engine/assets/world.hpp"
#include "engine/records/rows.hpp"
#include "engine/scoring/prepared.hpp"
#include "engine/sitting/log.hpp"

#include <tl/expected.hpp>

#include <deque>
#include <filesystem>
#include <map>
#include <memory>
#include <mutex>

namespace matula::records {

/// Replays and marks sittings by what stands on the instructor's own machine; nothing is taken from the
/// client but the log. What all sittings at one scenario share is worked out once.
class Marker {
public:
  /// `world` must outlive it. `assets_folder` is where both were read from: the rubric is named by its files.
  Marker(const assets::World& world, scoring::Standards standards,
         const std::filesystem::path& assets_folder);

  /// Marks one sitting, or says in words why it cannot be marked: a log or scenario that cannot be read, a
  /// sitting at another version of the scenario, a name that is no pseudonym. Safe from several threads.
  [[nodiscard]] tl::expected<Marked, std::string> mark(const Incoming& incoming);

  /// The same log under another text of its scenario, which must lay out the same bench.
  [[nodiscard]] tl::expected<Marked, std::string> mark_under(const Incoming& incoming,
                                                             const std::string& other_scenario);

  [[nodiscard]] const Rubric& rubric() const { return rubric_; }
  [[nodiscard]] const assets::World& world() const { return world_; }
  [[nodiscard]] const scoring::Standards& standards() const { return standards_; }

private:
  struct Ready;
  struct Slot;
  struct Base;
  scoring::Prepared prepare(const scenario::Scenario& scenario, const std::string& text);
  std::shared_ptr<const Ready> ready(const std::string& text, const std::string& file);
  tl::expected<Marked, std::string> finish(const Incoming& incoming, const Ready& under,
                                           const sitting::Log& log);

  const assets::World& world_;
  scoring::Standards standards_;
  Rubric rubric_;
  std::mutex busy_;
  std::map<std::string, std::shared_ptr<Slot>> ready_; ///< By content_name; the latest few.
  std::deque<std::string> ready_order_;
  std::deque<std::shared_ptr<const Base>> bases_; ///< Scenarios whose variants by seed share their work.
};

/// Why this cannot be a pseudonym; empty when it can: 1 to 64 letters, digits, '-', '_' and '.', so that
/// neither a full name nor a mail address slips in.
[[nodiscard]] std::string refuse_pseudonym(const std::string& pseudonym);

} // namespace matula::records
