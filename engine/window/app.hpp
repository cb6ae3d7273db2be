#pragma once

#include "engine/desk/control_book.hpp"
#include "engine/desk/desk.hpp"
#include "engine/desk/float_book.hpp"
#include "engine/reception/instructions.hpp"
#include "engine/render/bench_view.hpp"
#include "engine/window/aids.hpp"
#include "engine/window/clock.hpp"
#include "engine/window/help.hpp"
#include "engine/window/widgets.hpp"
#include "engine/window/window.hpp"

#include <map>
#include <memory>
#include <optional>
#include <string>
#include <vector>

namespace matula::window {

enum class Tab { Reception, Request, Do, Papers, Worksheet, Controls, Help };

/// What the start screen offers just now.
enum class Offering { Cases, Practice, Quizzes, Progress, Examination };

struct AuthorView;
struct ClassView;
struct ExamView;
struct PracticeView;
struct ProgressView;

/// A case on the start screen, or what is wrong with its file.
struct Offer {
  std::filesystem::path file;
  std::string title;
  std::string level;
  std::string request;
  std::string problem;
  int done = 0; ///< Sittings handed in.
};

/// A sitting that was begun and not handed in.
struct Unfinished {
  std::filesystem::path file;
  std::string title;
};

/// What the hands are set to do next; nothing of it is the world's.
struct Hands {
  bench::VesselName vessel = "specimen";
  bench::VesselName beside; ///< Held beside it for comparison; empty for nothing.
  appearance::View view;
  float eye_mm = 0;
  bench::VesselName pour_from = "specimen";
  double pour_ml = 5;
  bool gently = false;
  int bottle = 0;
  double amount = 1;
  bool in_drops = false;
  int heat_part = 0; ///< 0 upper, 1 middle, 2 lower part of the liquid.
  bool towards_person = false;
  bool keep_moving = true;
  double bath_c = 100;
  bool wipe = true;
  bool spin = true;
  bool wipe_prism = true;
  double wavelength_nm = 620;
  double rcf = 400;
  double spin_minutes = 5;
  bench::VesselName counterweight; ///< Opposite the vessel in the hand.
  bench::VesselName filter_from = "specimen";
  double filter_ml = 8;
  double warming_c_per_min = 0;
  int bin = 0;
  std::string paper_kind = "strip";
  std::string paper; ///< Piece at hand; empty for the one used last.
  double dip_s = 1;
  double drops_on = 2;
};

/// The tab of the control record.
struct ControlsView {
  bool shows_float = false;              ///< The urinometer's mornings instead of the control materials.
  std::optional<desk::ControlBook> book; ///< Read when the tab is first shown.
  int exercise = 0;
  bool open = false; ///< The chart is wanted.
  double day = 0;    ///< Answer: stop on this day; 0 never.
  int rule = 0;
  std::string verdict;
};

/// A line of the float's record that is being filled in.
struct FloatEntryView {
  std::string error;
  int decision = -1; ///< None chosen yet.
};

/// The daily check of the float, in the tab of the control record.
struct FloatView {
  std::optional<desk::FloatBook> book; ///< Read when it is first shown.
  int series = 0;
  FloatEntryView today;
  std::string words;
  double water_c = 22;
  FloatEntryView bench;
  std::string bench_words;
};

/// Everything the window holds between frames.
struct App {
  App(const desk::Ground& the_ground, Options the_options, render::BenchView the_view)
      : ground(the_ground), options(std::move(the_options)), view(std::move(the_view)),
        aids(load_aids(options.sittings, {options.text_scale, false, false})) {}

  const desk::Ground& ground;
  Options options;
  render::BenchView view;
  Widgets widgets;
  Clock clock;
  Hands hands;
  Tab tab = Tab::Request;
  bool focus_panel = true;    ///< The panel's first control gets the keyboard this frame.
  bool focus_hand_in = false; ///< The question before handing in does.
  int focus_tubes = 0;        ///< Frames for which the other half of the marks screen does.
  bool at_tubes = false;      ///< The keyboard is in that half.
  bool focus_strip = false;   ///< The strip's first control does.
  int focus_screen = 3; ///< Frames for which the start or marks screen's first control does; ImGui has its
                        ///< own wish at first.
  Aids aids;
  std::vector<Offer> offers;
  std::vector<Unfinished> unfinished;
  Offering offering = Offering::Cases;
  std::shared_ptr<PracticeView> practice; ///< Made when it is first wanted.
  std::shared_ptr<ProgressView> progress; ///< The same.
  std::shared_ptr<ExamView> exam;         ///< The same.
  std::shared_ptr<AuthorView> author;     ///< The same.
  std::shared_ptr<ClassView> classes;     ///< The same.
  std::vector<HelpTopic> help;
  ControlsView controls;
  FloatView floats;
  std::vector<reception::Sheet> sheets; ///< Instructions for patients.
  int sheet = -1;                       ///< The one on show; -1 for the one that fits the specimen.
  std::optional<desk::Desk> desk;
  std::map<std::string, std::string> drafts; ///< Text being typed, by worksheet item.
  std::string message;
  bool message_is_refusal = false;
  std::string caution;         ///< Key of the caution on show.
  bool guide_open = true;      ///< The guide is wanted, where the case has one.
  std::size_t guide_asked = 0; ///< The step that was asked for, from 1.
  std::string pointer_hue;     ///< Colour under the pointer in words; only while it is wanted.
  std::string hovered;         ///< Thing on the bench under the pointer.
  bool marks_wanted = false;   ///< The learner asked to hand in; waits for a yes.
  int marked_test = 0;
  appearance::View marks_view;
  std::vector<appearance::Appearance>
      marks_tubes;            ///< Of the test on show; empty when it has to be worked out.
  bool marks_earlier = false; ///< The learner's earlier tubes of the test instead of the tube by the book.
  std::vector<std::string> marks_captions; ///< Of marks_tubes, while those are shown.
  std::optional<desk::PadPair> marks_pads; ///< The same of a test on paper.

  std::optional<bench::Scene> scene; ///< As last seen; renewed when something changed.
  double seen_at_s = -1;
  double seen_at_wall_s = -1;
  bool changed = true; ///< Something happened since `scene` was made.
  double wall_s = 0;   ///< Moves the flame.
  double boil_s = 0;   ///< The same, but only while the bench's clock goes: moves bubbles and steam.

  /// Does something at the bench and puts the answer into the message line; `done_words` stand there when it
  /// was done.
  void act(const bench::Action& action, const std::string& done_words = "");
  /// Writes a line of the worksheet; `words` tell the learner what was written.
  void record(const std::string& item, const std::string& value, const std::string& words);
  /// Writes down which aids are on as a sitting begins or goes on.
  void note_aids();
  /// Writes down that an aid was taken or put away, and keeps the aids for the next time.
  void use_aid(const std::string& item, const std::string& value);
  void say(const std::string& words, bool refusal = false);
  void open(const std::filesystem::path& scenario_file);
  void resume(const std::filesystem::path& sitting_file);
  /// Goes to the bench with a case of an examination, or says why not.
  void sit(tl::expected<desk::Desk, scenario::Problems> examined);
  void close_case();
  void select(const bench::VesselName& vessel);
  void look(); ///< Writes down how the vessel is being looked at.
  [[nodiscard]] std::vector<bench::VesselName> vessel_names() const;
  [[nodiscard]] bool something_heats() const;
};

/// Looks through the folders of scenarios and sittings.
void find_cases(App& app);

/// What the bench view is told of the hands.
[[nodiscard]] render::Show show_of(const App& app);

/// "tube-3" to "Tube 3".
[[nodiscard]] std::string say_vessel(const bench::VesselName& name);

/// "12:05" of bench seconds.
[[nodiscard]] std::string say_time(double seconds);

} // namespace matula::window
