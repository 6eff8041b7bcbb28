/**
 * The checklists: their files, their frozen versions, and what they ask, machine-readable.
 *
 * <p>A checklist is rules as data, in {@code shared/checklists}; the format is described in
 * {@code docs/checklist-format.md}. A <em>draft</em> may change; a <em>published</em> version is frozen by the digest
 * of its bytes, and a file that was edited afterwards is refused.
 *
 * <p>Uses {@code scoring} and {@code platform}.
 */
@NullMarked
package varanid.intake.checklist;

import org.jspecify.annotations.NullMarked;
