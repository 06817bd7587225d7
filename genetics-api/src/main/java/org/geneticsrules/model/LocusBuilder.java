package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Describes a locus while a {@link ModelBuilder} is being filled. What is stated here is checked when the model is built.
 *
 * <p>Not thread-safe.
 */
public final class LocusBuilder {

    final String id;
    Optional<String> symbol = Optional.empty();
    Optional<String> title = Optional.empty();
    final Map<String, Allele> alleles = new LinkedHashMap<>();
    final List<String> repeatedAlleles = new ArrayList<>();
    Optional<String> wildType = Optional.empty();
    final List<String> declaredExpressions = new ArrayList<>();
    final List<OrderStatement> order = new ArrayList<>();
    final List<ShowsStatement> shows = new ArrayList<>();
    Optional<String> evidence = Optional.empty();

    LocusBuilder(String id) {
        this.id = id;
    }

    /**
     * States the symbol printed where allele symbols alone are not clear.
     *
     * @param text the symbol
     * @return this
     */
    public LocusBuilder symbol(String text) {
        symbol = Optional.of(text);
        return this;
    }

    /**
     * States words for the locus.
     *
     * @param text the title
     * @return this
     */
    public LocusBuilder title(String text) {
        title = Optional.of(text);
        return this;
    }

    /**
     * Adds alleles whose symbols are their ids.
     *
     * @param ids ids in display order
     * @return this
     */
    public LocusBuilder alleles(String... ids) {
        for (String allele : ids) {
            allele(Allele.of(allele));
        }
        return this;
    }

    /**
     * Adds an allele.
     *
     * @param allele the allele
     * @return this
     */
    public LocusBuilder allele(Allele allele) {
        if (alleles.putIfAbsent(allele.id(), allele) != null) {
            repeatedAlleles.add(allele.id());
        }
        return this;
    }

    /**
     * States which allele genotype text writes as {@code +}.
     *
     * @param allele id of the allele
     * @return this
     */
    public LocusBuilder wildType(String allele) {
        wildType = Optional.of(allele);
        return this;
    }

    /**
     * Declares expressions. If none is declared, they are those that are shown, in the order in which that is stated.
     *
     * @param names expressions in display order
     * @return this
     */
    public LocusBuilder expressions(String... names) {
        declaredExpressions.addAll(List.of(names));
        return this;
    }

    /**
     * States that an allele is dominant over another.
     *
     * @param dominant id of the allele that shows
     * @param recessive id of the allele that does not
     * @return this
     */
    public LocusBuilder dominant(String dominant, String recessive) {
        return order(new OrderStatement(dominant, recessive, Optional.empty()));
    }

    /**
     * States that an allele is dominant over another.
     *
     * @param statement the order statement
     * @return this
     */
    public LocusBuilder order(OrderStatement statement) {
        order.add(statement);
        return this;
    }

    /**
     * States what an allele, or a pair written with a slash, shows.
     *
     * @param key {@code allele} or {@code allele/allele}, by id
     * @param expression the expression
     * @return this
     */
    public LocusBuilder shows(String key, String expression) {
        return shows(key, expression, Optional.empty());
    }

    /**
     * States what an allele, or a pair written with a slash, shows, and on what evidence.
     *
     * @param key {@code allele} or {@code allele/allele}, by id
     * @param expression the expression
     * @param support id of the evidence, or empty for the locus' own
     * @return this
     */
    public LocusBuilder shows(String key, String expression, Optional<String> support) {
        int slash = key.indexOf('/');
        shows.add(
                slash < 0
                        ? new ShowsStatement(key, Optional.empty(), expression, support)
                        : new ShowsStatement(
                                key.substring(0, slash), Optional.of(key.substring(slash + 1)), expression, support));
        return this;
    }

    /**
     * States the evidence of the dominance statements that name none of their own.
     *
     * @param support id of the evidence
     * @return this
     */
    public LocusBuilder evidence(String support) {
        evidence = Optional.of(support);
        return this;
    }

    List<String> expressions() {
        if (!declaredExpressions.isEmpty()) {
            return declaredExpressions;
        }
        LinkedHashSet<String> shown = new LinkedHashSet<>();
        shows.forEach(statement -> shown.add(statement.expression()));
        return new ArrayList<>(shown);
    }
}
