#pragma once

#include <filesystem>
#include <string>
#include <string_view>
#include <vector>

namespace matula::strict {

/// Writes all of it and waits until it is on the disk; false when the system refuses (errno says why).
[[nodiscard]] bool put(int descriptor, std::string_view bytes);

/// Adds all of it at the end of the file and waits until it is on the disk, or adds nothing: what a full disk
/// took of it is taken back, so that the next line does not run on from half of this one. False when the
/// system refuses (errno says why).
[[nodiscard]] bool put_at_end(int descriptor, std::string_view bytes);

/// A new file is only there for good when its folder's entry is.
void keep_folder_entry(const std::filesystem::path& file);

/// Writes a whole file beside its place and puts it there at once, so that a file is the old one or the new
/// one and never a piece. Readable by its owner alone when `own`. What the system answered, or "".
[[nodiscard]] std::string write_whole(const std::filesystem::path& file, std::string_view bytes,
                                      bool own = false);

/// Files of a folder that end so (".toml"), by name; a folder that is not there holds nothing.
[[nodiscard]] std::vector<std::filesystem::path> files_in(const std::filesystem::path& folder,
                                                          const std::string& ending);

/// Whether it is a folder whose files can be listed.
[[nodiscard]] bool is_readable_folder(const std::filesystem::path& folder);

} // namespace matula::strict
