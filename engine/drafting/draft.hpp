#pragma once

#include "engine/author/save.hpp"
#include "engine/scenario/scenario.hpp"

#include <memory>
#include <string>
#include <vector>

namespace matula::drafting {

/// A case being written: its text, what the reader makes of it, and the way back. Every change is made in
/// place, so remarks, order and ends of lines stay. Text that reads badly is kept as it was typed.
class Draft {
public:
  /// `name` is what problems call the text; versions are counted from `first`. `catalogue` must outlive it.
  Draft(std::string text, std::string name, const matter::Catalogue& catalogue, unsigned first = 1);

  [[nodiscard]] const std::string& text() const { return text_; }
  /// What is wrong with the text as it stands; empty when it reads well.
  [[nodiscard]] const scenario::Problems& problems() const { return problems_; }
  /// The case as it last read well; null when it never has.
  [[nodiscard]] const std::shared_ptr<const scenario::Scenario>& case_as_read() const { return read_; }
  /// Rises with every change, going back included.
  [[nodiscard]] unsigned version() const { return version_; }

  /// Makes the changes as one step; `words` say what was done, for going back. A sentence when one of them
  /// cannot be made, and then none is; "" otherwise, also where nothing had to be changed.
  [[nodiscard]] std::string change(const std::vector<author::Change>& changes, const std::string& words);
  /// One more `[[path]]` with these lines; as above.
  [[nodiscard]] std::string add(const std::string& path, const std::vector<std::string>& lines,
                                const std::string& words);
  /// All of the text at once, TOML or not.
  void replace(std::string text, const std::string& words);

  [[nodiscard]] bool can_undo() const { return !past_.empty(); }
  [[nodiscard]] bool can_redo() const { return !future_.empty(); }
  /// What was taken back, or done again; "" when there was nothing.
  std::string undo();
  std::string redo();

private:
  struct Step {
    std::string text; ///< As it was on the other side of the step.
    std::string words;
  };
  void go_to(std::string text);
  std::string turn(std::vector<Step>& from, std::vector<Step>& to);

  const matter::Catalogue* catalogue_;
  std::string name_;
  std::string text_;
  std::shared_ptr<const scenario::Scenario> read_;
  scenario::Problems problems_;
  std::vector<Step> past_;
  std::vector<Step> future_;
  unsigned version_;
};

/// The path of the key that stands in a line of a TOML text (from 1): "specimen.leg[1].hours", or of the
/// table whose heading it is; empty for any other line.
[[nodiscard]] std::string path_in_line(const std::string& text, int line);

} // namespace matula::drafting
