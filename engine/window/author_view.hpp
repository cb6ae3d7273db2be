#pragma once

#include "engine/drafting/studio.hpp"
#include "engine/render/rect.hpp"
#include "engine/window/author.hpp"

#include <functional>
#include <map>
#include <memory>
#include <string>
#include <utility>
#include <vector>

namespace matula::window {

enum class AuthorPage { Specimen, Way, Request, Counter, Asked, Bench, Questions, Marks, Wish, File };

/// What is wished of the specimen, as chosen so far.
struct AuthorWish {
  std::map<std::string, int> words; ///< By test; 0 for nothing wished.
  std::map<std::string, int> by;    ///< By test: the substance it is made with; 0 for the usual one.
  std::vector<std::pair<std::string, std::string>> amounts; ///< Path of a substance, and how much of it.
  int colour = 0;
  int clarity = 0;
  std::string gravity;
  std::string ph;
};

/// A tube as it was last drawn.
struct DrawnTube {
  unsigned version = 0;
  appearance::View view;
  int width = 0;
  int height = 0;
  unsigned texture = 0;  ///< 0 when there is none.
  drafting::Looks looks; ///< A paper is drawn from it.
};

/// Making a case as the window holds it between frames.
struct AuthorView {
  explicit AuthorView(std::unique_ptr<drafting::Studio> the_studio) : studio(std::move(the_studio)) {}

  std::unique_ptr<drafting::Studio> studio;
  bool on_show = false;
  AuthorPage page = AuthorPage::Specimen;
  std::string patient = "1";                ///< Which patient of a pattern.
  std::map<std::string, std::string> typed; ///< What stands in the fields, by path;
  unsigned typed_version = 0;               ///< of this version of the draft.
  std::string name;
  bool replace_wanted = false; ///< There is something else in the file: a yes is needed.
  bool leave_wanted = false;   ///< The same for leaving without saving.
  int addition = -1;
  int preservative = -1;
  AuthorWish wish;
  bool looked_for = false; ///< A composition was asked for and has not come yet.
  appearance::View view;
  std::map<std::string, DrawnTube> tubes; ///< By test; "" for the specimen.
  std::string hint;                       ///< Of the row that has the keyboard.
  bool waits = false;                     ///< Something was still being done in the last frame.
  int focus_page = 0;                     ///< Frames for which the page's first control gets the keyboard,
  int focus_bench = 0;                    ///< or the bench's,
  int focus_strip = 0;                    ///< or the strip's.
  bool at_bench = false;                  ///< The keyboard is in that half.
  std::function<std::string(drafting::Studio&)> wanted; ///< Done after the frame: it makes the form anew.
};

/// Begins with a draft that the studio has just been given.
void enter_draft(App& app);
/// Does what is wanted, and says what could not be done.
void apply_wanted(App& app);
void save_draft(App& app, bool replace);
/// To the bench with the saved case, as a learner; the draft stays as it is.
void try_draft(App& app);
/// Back to where cases begin; asks first when something is not saved.
void leave_draft(App& app, bool really);

// Parts of the screens.
void draw_author_begin(App& app, const render::Rect& area);
void draw_author_strip(App& app, const render::Rect& area);
void draw_author_page(App& app); ///< The form's page on show.
void draw_author_rows(App& app, const std::string& group);
void draw_author_way(App& app);
void draw_author_asked(App& app);
void draw_author_bottles(App& app);
void draw_author_counter(App& app);
void draw_author_marks(App& app);
void draw_author_ticks(App& app, const std::string& prefix, const std::vector<drafting::Tick>& ticks,
                       std::string (drafting::Studio::*change)(const std::string&, bool));
void draw_author_wish(App& app);
void draw_author_file(App& app);
void draw_author_bench(App& app, const render::Rect& area); ///< The live bench.
void handle_author_keys(App& app);

} // namespace matula::window
