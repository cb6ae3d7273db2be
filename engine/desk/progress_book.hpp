#pragma once

#include "engine/desk/ground.hpp"
#include "engine/desk/progress_page.hpp"

#include <memory>

namespace matula::desk {

/// The learner's record as a page to read, and the tubes it speaks of.
class ProgressBook {
public:
  /// `learner`: folder of the learner's record.
  [[nodiscard]] static tl::expected<ProgressBook, scenario::Problems>
  load(const Ground& ground, const std::filesystem::path& learner);
  ~ProgressBook();
  ProgressBook(ProgressBook&&) noexcept;
  ProgressBook& operator=(ProgressBook&&) noexcept;

  /// Of the record as it stands on the disk now.
  [[nodiscard]] ProgressPage page() const;

  /// Three tubes from the reference's line to the learner's own, made by the book, each with what a practised
  /// reader calls it and what the learner does; nothing where no line is disputed. A second or two.
  [[nodiscard]] std::vector<Beside> disputed_tubes(const OwnLines& group, const appearance::View& view) const;

private:
  struct Impl;
  explicit ProgressBook(std::unique_ptr<Impl> impl);
  std::unique_ptr<Impl> impl_;
};

} // namespace matula::desk
