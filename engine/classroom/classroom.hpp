#pragma once

#include "engine/classroom/export_files.hpp"
#include "engine/classroom/import_run.hpp"
#include "engine/classroom/open_sitting.hpp"
#include "engine/classroom/store_page.hpp"

#include <atomic>
#include <filesystem>
#include <memory>
#include <optional>
#include <string>

namespace matula::classroom {

/// A class's records as a window needs them. Everything slow is done on threads of its own: one reads and
/// judges, one imports, one explains; the caller asks, and takes in what has come by `poll`. One classroom
/// has one store open.
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
  void close();                          ///< Lets go of the store; an import goes on.
  void look(const records::Scope& scope);
  void import(const ImportOrder& order); ///< Into the open store; the view is made anew at the end.
  void stop_import();
  void open_sitting(long long number);
  void close_sitting();
  void write(const ExportOrder& order); ///< Of what is looked at.

  /// Takes in what has come; true when something has.
  bool poll();
  [[nodiscard]] bool reading() const; ///< A page or a sitting is still to come.
  [[nodiscard]] bool busy() const;    ///< Anything at all is.

  // What there is, since the last poll.
  [[nodiscard]] const std::optional<StorePage>& page() const { return page_; }
  [[nodiscard]] const std::optional<OpenSitting>& sitting() const { return sitting_; }
  [[nodiscard]] ImportState import_state() const { return import_.state(); }
  [[nodiscard]] const std::optional<ImportEnd>& import_end() const { return import_end_; }
  [[nodiscard]] const std::string& written() const { return written_; } ///< Where the last file lies.
  /// Why the last thing asked for could not be done; empty when it could.
  [[nodiscard]] const std::string& trouble() const { return trouble_; }

private:
  struct Impl;
  void fail(const std::string& words);

  std::optional<StorePage> page_;
  std::optional<OpenSitting> sitting_;
  std::optional<ImportEnd> import_end_;
  std::string written_;
  std::string trouble_;
  std::atomic<long long> wanted_{0}; ///< Number of the sitting asked for last; 0 for none.
  ImportRun import_;
  std::unique_ptr<Impl> impl_; ///< Last: its threads end before the rest goes.
};

/// Class stores (*.db) that lie in a folder, by name; a folder that is not there holds none.
[[nodiscard]] std::vector<std::filesystem::path> stores_in(const std::filesystem::path& folder);

} // namespace matula::classroom
