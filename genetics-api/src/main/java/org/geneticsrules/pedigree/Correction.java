package org.geneticsrules.pedigree;

import com.google.common.collect.ImmutableList;
import java.time.LocalDate;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * An entry in the trail of a pedigree: which records were changed, when and why. Nothing is overwritten; what stood there before is kept.
 *
 * @param date when it was corrected
 * @param by on whose word, as an opaque id or a role such as {@code registrar}; names of people are personal data and do not belong here
 * @param reason why, in a sentence
 * @param changes the records that change together, at least one, each once
 */
public record Correction(LocalDate date, Optional<String> by, String reason, List<Change> changes) {

    /**
     * Checks and copies the changes.
     *
     * @param date when it was corrected
     * @param by on whose word
     * @param reason why
     * @param changes the records that change
     * @throws IllegalArgumentException if the reason is blank, nothing changes, or a record changes twice
     */
    public Correction {
        changes = ImmutableList.copyOf(changes);
        if (reason.isBlank() || by.filter(String::isBlank).isPresent()) {
            throw new IllegalArgumentException("a correction states its reason, and nothing blank");
        }
        if (changes.isEmpty()) {
            throw new IllegalArgumentException("a correction changes something");
        }
        Set<String> seen = new HashSet<>();
        for (Change change : changes) {
            if (!seen.add(change.pointer())) {
                throw new IllegalArgumentException(
                        "the record " + change.pointer() + " changes twice in one correction");
            }
        }
    }
}
