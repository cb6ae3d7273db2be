#pragma once

#include "engine/classroom/export_files.hpp"
#include "engine/classroom/import_run.hpp"
#include "engine/classroom/keeping.hpp"
#include "engine/classroom/open_sitting.hpp"
#include "engine/classroom/rescore_run.hpp"
#include "engine/classroom/sealed_run.hpp"
#include "engine/classroom/store_page.hpp"
#include "engine/records/versions.hpp"

#include <atomic>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>

namespace matula::classroom {

/// A class's records as a window needs them. Everything slow is done on threads of its own: one reads and
/// judges, one does long work (taking in, marking anew; one at a time), one explains; the caller asks, and
/// takes in what has come by `poll`. One classroom has one store open.
class Classroom {
public:
  /// All three must outlive it. `assets_folder` is where the first two were read from.
  Classroom(const assets::World& world, const scoring::Standards& standards,
            const std::filesystem::path& assets_folder);
  ~Classroom();
  Classroom(const Classroom&) = delete;
  Classroom& operator=(const Classroom&) = delete;

  // Asking. Each returns at once.
  void open(const std::string& address); ///< A file (made when it is not there) or a server's address.
  void close();                          ///< Lets go of the store; long work goes on.
  void look(const records::Scope& scope);
  void import(const ImportOrder& order); ///< Into the open store; the view is made anew at the end.
  void take_sealed(const SealedOrder& order, seal::Secret passphrase); ///< The same from sealed results.
  void mark_anew(const RescoreOrder& order); ///< What is looked at, but for the order's own case.
  void stop_work();
  void open_sitting(long long number);
  void close_sitting();
  void write(const ExportOrder& order); ///< Of what is looked at.
  void want_versions();                 ///< Of the marks, of what is looked at; asked for once a page.
  void let_count(const records::Version& version);

  // Keeping the store. Nothing is removed while long work goes on.
  void look_at_forgetting(const std::string& pseudonym);
  void look_at_past(const std::string& today);
  void forget(const std::string& pseudonym);
  void forget_past(const std::string& today);
  void take_names(const std::filesystem::path& file);
  void back_up(const std::filesystem::path& file);
  void check_store();

  /// Takes in what has come; true when something has.
  bool poll();
  [[nodiscard]] bool reading() const; ///< A page or a sitting is still to come.
  [[nodiscard]] bool busy() const;    ///< Anything at all is.

  // What there is, since the last poll.
  [[nodiscard]] const std::optional<StorePage>& page() const { return page_; }
  [[nodiscard]] int pages() const { return pages_; } ///< How many pages have come: `page` is another one.
  [[nodiscard]] const std::optional<OpenSitting>& sitting() const { return sitting_; }
  [[nodiscard]] WorkState work_state() const { return work_.state(); }
  [[nodiscard]] const std::optional<ImportEnd>& import_end() const { return import_end_; }
  [[nodiscard]] const std::optional<SealedEnd>& sealed_end() const { return sealed_end_; }
  [[nodiscard]] const std::optional<RescoreEnd>& rescore_end() const { return rescore_end_; }
  /// Nothing until they have been read anew after something changed.
  [[nodiscard]] const std::optional<std::vector<records::Version>>& versions() const { return versions_; }
  [[nodiscard]] const std::optional<Forgetting>& forgetting() const { return forgetting_; }
  [[nodiscard]] const std::optional<PastDays>& past() const { return past_; }
  [[nodiscard]] const std::optional<Kept>& kept() const { return kept_; }
  [[nodiscard]] const std::string& written() const { return written_; } ///< Where the last file lies.
  /// Why the last thing asked for could not be done; empty when it could.
  [[nodiscard]] const std::string& trouble() const { return trouble_; }

private:
  struct Impl;
  void fail(const std::string& words);
  void start_over(); ///< What is known of the store is forgotten.
  template <class End, class Run> void do_long(std::optional<End>& place, Run run);
  template <class Do> void keep(Do work, bool removes);

  std::optional<StorePage> page_;
  int pages_ = 0;
  std::optional<OpenSitting> sitting_;
  std::optional<ImportEnd> import_end_;
  std::optional<SealedEnd> sealed_end_;
  std::optional<RescoreEnd> rescore_end_;
  std::optional<std::vector<records::Version>> versions_;
  bool versions_wanted_ = false;
  std::optional<Forgetting> forgetting_;
  std::optional<PastDays> past_;
  std::optional<Kept> kept_;
  std::string written_;
  std::string trouble_;
  std::atomic<long long> wanted_{0}; ///< Number of the sitting asked for last; 0 for none.
  Work work_;
  std::unique_ptr<Impl> impl_; ///< Last: its threads end before the rest goes.
};

/// Class stores (*.db) that lie in a folder, by name; a folder that is not there holds none.
[[nodiscard]] std::vector<std::filesystem::path> stores_in(const std::filesystem::path& folder);

} // namespace matula::classroom
