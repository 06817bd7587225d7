/**
 * Hypotheses as small documents on a base model.
 *
 * <p>A {@link org.geneticsrules.patch.Patch} names its base by id, version and hash, and states which whole statements of it are set to
 * what and which are removed. {@link org.geneticsrules.patch.Patches#apply} edits the base in its document form; the result is read and
 * checked like any other model ({@link org.geneticsrules.json.DocumentReader#apply}), and whatever is wrong with it is told at the
 * statement of the patch that brought it about. Several patches on one base touch different statements, so that their order does not
 * matter.
 *
 * <p>All types are immutable and thread-safe.
 */
@NullMarked
package org.geneticsrules.patch;

import org.jspecify.annotations.NullMarked;
