package org.geneticsrules.evidence;

import com.google.common.collect.ImmutableList;
import java.util.List;

/**
 * The support for one claim.
 *
 * <p>Immutable and thread-safe.
 *
 * @param id the name by which statements of a model refer to it
 * @param grade the strength of the support
 * @param claim what is claimed, in a sentence
 * @param sources full citations, in the order given; empty only where there is no source to name
 * @param dissent what those who disagree hold, in the order given
 */
public record Evidence(String id, Grade grade, String claim, List<String> sources, List<String> dissent) {

    /**
     * Copies the lists.
     *
     * @param id the name by which statements refer to it
     * @param grade the strength of the support
     * @param claim what is claimed
     * @param sources full citations
     * @param dissent differing views
     */
    public Evidence {
        sources = ImmutableList.copyOf(sources);
        dissent = ImmutableList.copyOf(dissent);
    }

    /**
     * Returns evidence without differing views.
     *
     * @param id the name by which statements refer to it
     * @param grade the strength of the support
     * @param claim what is claimed, in a sentence
     * @param sources full citations
     * @return the evidence
     */
    public static Evidence of(String id, Grade grade, String claim, String... sources) {
        return new Evidence(id, grade, claim, List.of(sources), List.of());
    }
}
