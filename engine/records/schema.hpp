#pragma once

#include "engine/records/connection.hpp"

namespace matula::records {

/// The schema this program writes.
[[nodiscard]] int newest_schema();

/// Brings a store, or an empty database, to the schema of this number, one transaction a step. Throws Trouble
/// for a store of a newer program.
void migrate(Connection& connection, int to);

} // namespace matula::records
