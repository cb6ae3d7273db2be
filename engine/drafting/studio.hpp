#pragma once

#include "engine/drafting/row.hpp"
#include "engine/drafting/seen.hpp"
#include "engine/drafting/store.hpp"
#include "engine/scenario/problem.hpp"

#include <tl/expected.hpp>

#include <cstdint>
#include <memory>

namespace matula::assets {
struct World;
}
namespace matula::scoring {
struct Standards;
}

namespace matula::drafting {

/// A pattern a case can be made from.
struct PatternOffer {
  std::string key;
  std::string about; ///< What it asks for.
};

/// What may be wished of a test.
struct WishOffer {
  std::string test;
  std::string title;
  std::vector<std::string> words;
};

/// One author at one case: the form, the bench beside it that works behind the author's back, and the file.
/// The window works through this alone. Whatever returns a string returns a sentence when it could not be
/// done, else "".
class Studio {
public:
  struct Folders {
    std::filesystem::path assets;
    std::filesystem::path own;     ///< Where cases are written.
    std::filesystem::path shipped; ///< Cases that come with the program.
  };
  /// `world` and `standards` must outlive it.
  [[nodiscard]] static tl::expected<std::unique_ptr<Studio>, scenario::Problems>
  open(const assets::World& world, const scoring::Standards& standards, const Folders& folders);
  ~Studio();
  Studio(const Studio&) = delete;
  Studio& operator=(const Studio&) = delete;

  // Where a case begins.
  [[nodiscard]] const std::vector<PatternOffer>& patterns() const;
  [[nodiscard]] std::vector<std::filesystem::path> own_files() const;
  [[nodiscard]] std::vector<std::filesystem::path> shipped_files() const;
  /// Another patient for every seed; 0 for the pattern's typical one.
  std::string begin_pattern(const std::string& key, std::uint64_t seed);
  std::string begin_plain();
  std::string begin_copy(const std::filesystem::path& file); ///< Without its [review]: nobody saw the copy.
  std::string begin_own(const std::filesystem::path& file);
  void close();
  [[nodiscard]] bool begun() const;

  // The form.
  [[nodiscard]] const Form& form() const;
  [[nodiscard]] unsigned version() const; ///< Rises with every change.
  [[nodiscard]] const std::string& text() const;
  std::string set(const std::string& path, const std::string& typed);
  std::string step(const std::string& path, bool more);
  std::string remove(const std::string& path); ///< Of a leg, a question: all of it.
  std::string add(const std::string& path);    ///< One of form().additions.
  std::string add_leg();
  std::string add_preservative(const std::string& bottle);
  std::string add_question();
  std::string add_option(const std::string& path);       ///< To the question whose right answer stands there.
  std::string ask_for(const std::string& test, bool on); ///< Puts out the bottles it takes as well.
  std::string put_out(const std::string& bottle, bool on); ///< Put away, its age goes with it.
  /// A delivery in order, true of the specimen; remove("collection") takes it out.
  std::string add_counter();
  std::string ask_at_counter(const std::string& request, bool on);
  std::string add_void(); ///< The first makes the sums of a day possible: start, end, weight, sex.
  void set_text(const std::string& text);
  [[nodiscard]] bool can_undo() const;
  [[nodiscard]] bool can_redo() const;
  std::string undo(); ///< What was taken back; "" when there was nothing.
  std::string redo();

  // The bench beside it.
  /// Takes over what has been worked out since; true when something has changed on the bench.
  bool poll();
  /// Whether more is to come.
  [[nodiscard]] bool working() const;
  [[nodiscard]] const Seen& seen() const;
  [[nodiscard]] Looks looks(const std::string& test, const appearance::View& view) const;
  [[nodiscard]] std::optional<appearance::Appearance> specimen(const appearance::View& view) const;

  // Make it look like this.
  [[nodiscard]] std::vector<WishOffer> wish_offers() const;
  [[nodiscard]] std::vector<std::string> colours() const;
  [[nodiscard]] std::vector<std::string> clarities() const;
  /// Of which a certain amount may be wished, by such a path as "dissolved.albumin".
  [[nodiscard]] std::vector<Addition> substances() const;
  /// What a wish for so much of it begins with: what the case holds, else a little.
  [[nodiscard]] std::string amount_to_wish(const std::string& path) const;
  /// Wishes such as "heat=2+", "benedict=2+ by lactose", "sg=1.018", "dissolved.albumin=130 mg/dL"; goes on
  /// behind the form.
  std::string make_it_look(const std::vector<std::string>& wishes);
  void stop_making();
  [[nodiscard]] bool making() const;
  [[nodiscard]] const std::optional<Proposal>& proposal() const;
  [[nodiscard]] const std::vector<std::string>& refusal() const; ///< Why it cannot be had.
  std::string take();
  void leave();

  // The file.
  [[nodiscard]] std::string suggested_name() const;
  [[nodiscard]] bool unsaved() const;
  [[nodiscard]] std::filesystem::path file() const; ///< Where it lies; empty when it was never saved.
  [[nodiscard]] Saved save(const std::string& name, bool replace);

private:
  struct Impl;
  explicit Studio(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

} // namespace matula::drafting
