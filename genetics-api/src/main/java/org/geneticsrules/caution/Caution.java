package org.geneticsrules.caution;

import com.google.common.collect.ImmutableList;
import java.util.List;

/**
 * One thing to be said along with an answer.
 *
 * @param id its name
 * @param trigger when it is due
 * @param line one calm first line
 * @param detail what else to know, sentence by sentence
 * @param sources full citations; empty where it is common practice
 * @param date year and month in which it was written, for example {@code 2026-11}
 * @param excludes true if a mating that raises it is not proposed, unless somebody asks for it by the name of the caution
 */
public record Caution(
        String id,
        Trigger trigger,
        String line,
        List<String> detail,
        List<String> sources,
        String date,
        boolean excludes) {

    /**
     * Copies the lists.
     *
     * @param id its name
     * @param trigger when it is due
     * @param line the first line
     * @param detail what else to know
     * @param sources full citations
     * @param date when it was written
     * @param excludes whether a mating that raises it is not proposed
     */
    public Caution {
        detail = ImmutableList.copyOf(detail);
        sources = ImmutableList.copyOf(sources);
    }
}
