#include "workbench/arms_alike.h"

#include <optional>
#include <string>

namespace keenfall::workbench {

namespace {

template <class T>
bool may_be_one(const std::optional<T>& one, const std::optional<T>& other) {
  return !one || !other || *one == *other;
}
bool may_be_one(const std::string& one, const std::string& other) {
  return one.empty() || other.empty() || one == other;
}

}  // namespace

bool may_be_one(const trials::Arm& one, const trials::Arm& other) {
  const bool one_motion = one.method.motion == trials::Motion::not_recorded ||
                          other.method.motion == trials::Motion::not_recorded ||
                          one.method.motion == other.method.motion;
  return one.blade == other.blade && one.medium.name == other.medium.name &&
         may_be_one(one.medium.condition, other.medium.condition) &&
         may_be_one(one.edge.bevel_angle, other.edge.bevel_angle) &&
         may_be_one(one.edge.apex_angle, other.edge.apex_angle) &&
         may_be_one(one.edge.finish, other.edge.finish) &&
         may_be_one(one.edge.thickness_behind_edge_mm, other.edge.thickness_behind_edge_mm) &&
         one_motion && may_be_one(one.method.as_written, other.method.as_written) &&
         may_be_one(one.method.cut_length_mm, other.method.cut_length_mm) &&
         may_be_one(one.method.edge_used_mm, other.method.edge_used_mm) &&
         may_be_one(one.method.board, other.method.board);
}

}  // namespace keenfall::workbench
