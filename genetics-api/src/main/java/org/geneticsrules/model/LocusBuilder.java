package org.geneticsrules.model;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.trait.Sex;

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
    final DominanceBuilder common = new DominanceBuilder();
    final Map<Sex, DominanceBuilder> bySex = new EnumMap<>(Sex.class);
    Optional<String> absent = Optional.empty();
    final Map<String, Map<String, Probability>> mutation = new LinkedHashMap<>();
    final Map<String, Map<String, String>> mutationEvidence = new LinkedHashMap<>();

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
        return order(new Dominance.Order(dominant, recessive, Optional.empty()));
    }

    /**
     * States that an allele is dominant over another.
     *
     * @param statement the order statement
     * @return this
     */
    public LocusBuilder order(Dominance.Order statement) {
        common.order(statement);
        return this;
    }

    /**
     * States what an allele, or a pair written with a slash, shows.
     *
     * @param key {@code allele} or {@code allele/allele}, by id; {@code allele/Y} or {@code allele/W} for a hemizygote
     * @param expression the expression
     * @return this
     */
    public LocusBuilder shows(String key, String expression) {
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
    public LocusBuilder shows(String key, String expression, Optional<String> support) {
        common.shows(key, expression, support);
        return this;
    }

    /**
     * States the evidence of the dominance statements that name none of their own.
     *
     * @param support id of the evidence
     * @return this
     */
    public LocusBuilder evidence(String support) {
        common.evidence(support);
        return this;
    }

    /**
     * States the dominance that holds in both sexes.
     *
     * @param describe fills in the statements
     * @return this
     */
    public LocusBuilder dominance(Consumer<DominanceBuilder> describe) {
        describe.accept(common);
        return this;
    }

    /**
     * States the dominance of one sex by itself, where the sexes differ; then the other sex is stated so too, and nothing for both.
     *
     * @param sex the sex
     * @param describe fills in the statements
     * @return this
     */
    public LocusBuilder in(Sex sex, Consumer<DominanceBuilder> describe) {
        describe.accept(bySex.computeIfAbsent(sex, one -> new DominanceBuilder()));
        return this;
    }

    /**
     * States what animals show that lack the chromosome of this locus, which must be on a Y or W.
     *
     * @param expression one of the expressions
     * @return this
     */
    public LocusBuilder absent(String expression) {
        absent = Optional.of(expression);
        return this;
    }

    /**
     * States how often one allele turns into another from parent to gamete.
     *
     * @param from id of the allele of the parent
     * @param to id of the allele of the gamete
     * @param rate the chance per gamete that would carry the former
     * @return this
     */
    public LocusBuilder mutation(String from, String to, Probability rate) {
        return mutation(from, to, rate, Optional.empty());
    }

    /**
     * States how often one allele turns into another from parent to gamete, and on what evidence.
     *
     * @param from id of the allele of the parent
     * @param to id of the allele of the gamete
     * @param rate the chance per gamete that would carry the former
     * @param support id of the evidence, if stated
     * @return this
     */
    public LocusBuilder mutation(String from, String to, Probability rate, Optional<String> support) {
        mutation.computeIfAbsent(from, allele -> new LinkedHashMap<>()).put(to, rate);
        support.ifPresent(id -> mutationEvidence
                .computeIfAbsent(from, allele -> new LinkedHashMap<>())
                .put(to, id));
        return this;
    }

    /** The statements that hold in a sex. */
    DominanceBuilder dominance(Sex sex) {
        return bySex.getOrDefault(sex, common);
    }

    /** All statements once: those for both sexes, or those of each. */
    List<DominanceBuilder> dominances() {
        return bySex.isEmpty() ? List.of(common) : new ArrayList<>(bySex.values());
    }

    /** The address of the statements that hold in a sex. */
    String dominancePointer(Sex sex) {
        String all = Pointer.of("loci", id, "dominance");
        return bySex.containsKey(sex) ? all + "/" + sex.word() : all;
    }

    List<String> expressions() {
        if (!declaredExpressions.isEmpty()) {
            return declaredExpressions;
        }
        LinkedHashSet<String> shown = new LinkedHashSet<>();
        dominances().forEach(each -> each.shows.forEach(statement -> shown.add(statement.expression())));
        absent.ifPresent(shown::add);
        return new ArrayList<>(shown);
    }
}
