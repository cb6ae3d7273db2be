#pragma once

#include "engine/attribution/explanation.hpp"
#include "engine/desk/closed.hpp"
#include "engine/desk/earlier.hpp"
#include "engine/desk/ground.hpp"
#include "engine/guide/guide.hpp"
#include "engine/scenario/brief.hpp"
#include "engine/scoring/report.hpp"
#include "engine/sitting/event.hpp"
#include "sim/bench/outcome.hpp"
#include "sim/bench/scene.hpp"

#include <filesystem>
#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace matula::examination {
struct Seat;
}
namespace matula::seal {
struct Device;
}

namespace matula::desk {

/// A pad of the learner's paper as it was when read and the same by the book, with the card's row for it.
struct PadPair {
  std::optional<bench::SeenPad> learner; ///< Nothing when the test was not done.
  std::optional<bench::SeenPad> book;    ///< Nothing when the recipe could not be finished.
  bench::SeenCardRow row;                ///< Without fields for a paper without a card.
};

/// What a guided learner is told now.
struct GuideNow {
  std::string part;
  std::string goal;
  guide::Help help = guide::Help::EachStep;
  std::string say; ///< The step that is due; empty when all is done, and then `goal` is the farewell.
  std::string why;
  std::string show;    ///< Tab the control is in; may be empty.
  std::string remark;  ///< What the last act was too early for.
  std::string welcome; ///< Only before the first step is done.
  std::size_t steps_done = 0;
  std::size_t steps = 0;
};

/// One learner at one case, with everything written down as it happens: the session, its log and, once the
/// worksheet is handed in, its marks. The case's truth stays inside. The window works through this alone.
class Desk {
public:
  /// Begins a sitting of a scenario file; the log is a new file in `sittings`.
  [[nodiscard]] static tl::expected<Desk, scenario::Problems>
  begin(const Ground& ground, const std::filesystem::path& scenario_file,
        const std::filesystem::path& sittings);

  /// Goes on with a sitting where its log ends; the scenario is looked for in `scenarios`.
  [[nodiscard]] static tl::expected<Desk, scenario::Problems>
  resume(const Ground& ground, const std::filesystem::path& sitting_file,
         const std::filesystem::path& scenarios);

  /// Sits one case of an examination: begins it, or goes on where its log in `folder` ends. Every line is
  /// chained and signed with the device's key. There is no guide, there are no marks, and nothing is added to
  /// the learner's record; a case that is handed in already is closed again with the same code.
  [[nodiscard]] static tl::expected<Desk, scenario::Problems> sit(const Ground& ground,
                                                                  const examination::Seat& seat,
                                                                  const seal::Device& device,
                                                                  const std::filesystem::path& folder);

  ~Desk();
  Desk(Desk&&) noexcept;
  Desk& operator=(Desk&&) noexcept;

  [[nodiscard]] const scenario::Brief& brief() const;
  [[nodiscard]] const std::filesystem::path& log_file() const;
  /// Where the marks are written when the worksheet is handed in: beside the log.
  [[nodiscard]] std::filesystem::path marks_file() const;

  /// Performs an action now and writes it down; a refusal comes back in words. Throws nothing: an event that
  /// cannot be written is not performed, and the outcome says why.
  bench::Outcome act(const bench::Action& action);

  /// Writes an entry of the worksheet; the problem in words, or empty.
  [[nodiscard]] std::string record(const std::string& item, const std::string& value);

  /// Hands the worksheet in, marks the sitting and writes the marks down; the problem in words, or empty. In
  /// an examination it signs the end and writes the sealed result instead.
  [[nodiscard]] std::string finish();

  /// Whether this is an examination: no words at hand, no help, no marks.
  [[nodiscard]] bool examination() const;
  /// In an examination after finish(): where the result lies, and the closing code.
  [[nodiscard]] const std::optional<Closed>& closed() const;

  /// Nothing where the case has no guide.
  [[nodiscard]] std::optional<GuideNow> guide() const;

  void run_to(double time_s);
  /// Writes the present time down, so that a resumed sitting comes back to it.
  void note_time();

  [[nodiscard]] double time_s() const;
  [[nodiscard]] bool finished() const;
  [[nodiscard]] bool wears_gloves() const;
  [[nodiscard]] bool wears_goggles() const;
  [[nodiscard]] bench::Scene scene(const appearance::View& view) const;
  [[nodiscard]] const std::map<std::string, std::string>& worksheet() const;

  /// After finish(): the marks.
  [[nodiscard]] const std::optional<scoring::Report>& report() const;
  /// After finish(): why each reading came out as it did, in the order of the worksheet.
  [[nodiscard]] const std::vector<attribution::Explanation>& why() const;
  /// After finish(): the learner's tube as it was when read, and the tube by the book; the first is left out
  /// when the test was not done.
  [[nodiscard]] std::vector<appearance::Appearance> tubes_of(const scoring::ByTheBook& test,
                                                             const appearance::View& view) const;

  /// The same for a test that is read on a paper; nothing for any other.
  [[nodiscard]] std::optional<PadPair> pads_of(const scoring::ByTheBook& test) const;

  /// After finish(): the learner's tube of this test among those of up to `most` earlier sittings, by
  /// strength.
  [[nodiscard]] std::vector<EarlierTube> earlier_tubes(const scoring::ByTheBook& test,
                                                       const appearance::View& view, std::size_t most) const;

private:
  [[nodiscard]] bench::Scene seen_when_read(const scoring::ByTheBook& test) const;
  struct Impl;
  explicit Desk(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

/// What a learner may know of a scenario file, without opening it.
[[nodiscard]] tl::expected<scenario::Brief, scenario::Problems>
read_brief(const Ground& ground, const std::filesystem::path& scenario_file);

/// What a sitting on the disk is about.
struct KeptSitting {
  std::string scenario; ///< Key; empty where the file cannot be read.
  bool handed_in = false;
};

/// Looks into a sitting. A file that cannot be read counts as not handed in.
[[nodiscard]] KeptSitting look_into(const std::filesystem::path& sitting_file);

} // namespace matula::desk
