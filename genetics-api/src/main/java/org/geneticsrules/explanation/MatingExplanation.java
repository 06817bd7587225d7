package org.geneticsrules.explanation;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.List;
import java.util.Set;

/**
 * The full reasons behind the chances of a mating.
 *
 * @param cases the cases of what the parents may be; their chances sum to 1
 * @param ways all ways to all phenotypes; their chances sum to 1
 * @param hidden for each phenotype, the loci that cannot be read off a kit that shows it
 * @param statements pointers of the statements of the model on which the chances rest
 */
public record MatingExplanation(List<ParentsCase> cases, List<Way> ways, List<Hidden> hidden, Set<String> statements) {

    /**
     * Copies the collections.
     *
     * @param cases the cases of parents
     * @param ways the ways to phenotypes
     * @param hidden the hidden loci
     * @param statements pointers of statements
     */
    public MatingExplanation {
        cases = ImmutableList.copyOf(cases);
        ways = ImmutableList.copyOf(ways);
        hidden = ImmutableList.copyOf(hidden);
        statements = ImmutableSet.copyOf(statements);
    }
}
