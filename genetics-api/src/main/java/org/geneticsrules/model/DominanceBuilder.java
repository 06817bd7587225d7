package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Describes what the genotypes of a locus show as while a {@link ModelBuilder} is being filled.
 *
 * <p>Not thread-safe.
 */
public final class DominanceBuilder {

    final List<Dominance.Order> order = new ArrayList<>();
    final List<Dominance.Shows> shows = new ArrayList<>();
    Optional<String> evidence = Optional.empty();

    DominanceBuilder() {}

    /**
     * States that an allele is dominant over another.
     *
     * @param dominant id of the allele that shows
     * @param recessive id of the allele that does not
     * @return this
     */
    public DominanceBuilder dominant(String dominant, String recessive) {
        return order(new Dominance.Order(dominant, recessive, Optional.empty()));
    }

    /**
     * States that an allele is dominant over another.
     *
     * @param statement the order statement
     * @return this
     */
    public DominanceBuilder order(Dominance.Order statement) {
        order.add(statement);
        return this;
    }

    /**
     * States what an allele, or a pair written with a slash, shows.
     *
     * @param key {@code allele} or {@code allele/allele}, by id; {@code allele/Y} or {@code allele/W} for a hemizygote
     * @param expression the expression
     * @return this
     */
    public DominanceBuilder shows(String key, String expression) {
        return shows(key, expression, Optional.empty());
    }

    /**
     * States what an allele, or a pair written with a slash, shows, and on what evidence.
     *
     * @param key {@code allele} or {@code allele/allele}, by id; {@code allele/Y} or {@code allele/W} for a hemizygote
     * @param expression the expression
     * @param support id of the evidence, or empty for the locus' own
     * @return this
     */
    public DominanceBuilder shows(String key, String expression, Optional<String> support) {
        int slash = key.indexOf('/');
        shows.add(
                slash < 0
                        ? new Dominance.Shows(key, Optional.empty(), expression, support)
                        : new Dominance.Shows(
                                key.substring(0, slash), Optional.of(key.substring(slash + 1)), expression, support));
        return this;
    }

    /**
     * States the evidence of the statements that name none of their own.
     *
     * @param support id of the evidence
     * @return this
     */
    public DominanceBuilder evidence(String support) {
        evidence = Optional.of(support);
        return this;
    }

    boolean isEmpty() {
        return order.isEmpty() && shows.isEmpty() && evidence.isEmpty();
    }

    Dominance build() {
        return new Dominance(order, shows, evidence);
    }
}
