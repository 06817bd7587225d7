package org.geneticsrules.model;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.BoxSet;
import org.geneticsrules.trait.Condition;
import org.geneticsrules.trait.Sex;

/**
 * The genotypes an animal may have: the one type for "partly known", "what is seen allows" and "what a name allows".
 *
 * <p>{@code C/-} is the set of all genotypes with at least one {@code C}. The set is kept as disjoint boxes, each a product of one
 * set of pairs per locus, and is never listed.
 *
 * <pre>{@code
 * GenotypeSet sable = GenotypeSet.parse(model, "C/- B/-", OmittedLoci.UNKNOWN);
 * GenotypeSet carrier = sable.and(GenotypeSet.parse(model, "C/c", OmittedLoci.UNKNOWN));
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class GenotypeSet {

    private final Model model;
    private final BoxSet boxes;

    private GenotypeSet(Model model, BoxSet boxes) {
        this.model = model;
        this.boxes = boxes;
    }

    /**
     * Returns the set of all genotypes: nothing is known.
     *
     * @param model a model
     * @return the full set
     */
    public static GenotypeSet all(Model model) {
        return new GenotypeSet(model, model.genotypeSpace().everything());
    }

    /**
     * Returns the genotypes that agree with one at every locus that it covers.
     *
     * @param model the model of the genotype
     * @param genotype a genotype of some or all loci
     * @return the set; a single genotype if all loci are covered
     */
    public static GenotypeSet of(Model model, Genotype genotype) {
        GenotypeSet set = all(model);
        for (AllelePair pair : genotype.pairs().values()) {
            set = set.where(pair.locus(), List.of(pair));
        }
        return set;
    }

    /**
     * Returns the genotypes whose expressions lie in a region.
     *
     * @param model the model of the region
     * @param region a region of {@link Regions#space()}
     * @return the set
     */
    public static GenotypeSet showing(Model model, BoxSet region) {
        GenotypeSet union = new GenotypeSet(model, model.genotypeSpace().nothing());
        for (Condition box : region.boxes()) {
            union = union.or(all(model).showing(box));
        }
        return union;
    }

    /**
     * Reads genotype text such as {@code C/- B/b}.
     *
     * @param model the model whose symbols are used
     * @param text genotype text
     * @param omitted what it means that a locus is not named
     * @return the genotypes the text allows
     * @throws org.geneticsrules.problem.ProblemsException if the text is not understood, with the place and what was expected
     */
    public static GenotypeSet parse(Model model, String text, OmittedLoci omitted) {
        return GenotypeText.of(model).parse(text, omitted).genotypes();
    }

    /**
     * Returns the model whose genotypes these are.
     *
     * @return the model
     */
    public Model model() {
        return model;
    }

    /**
     * Returns the genotypes of this set that have one of some pairs at a locus.
     *
     * @param locus id of a locus
     * @param pairs pairs of that locus
     * @return the narrower set
     */
    public GenotypeSet where(String locus, Collection<AllelePair> pairs) {
        String[] texts = pairs.stream().map(AllelePair::toString).toArray(String[]::new);
        return new GenotypeSet(model, boxes.and(model.genotypeSpace().where(locus, Allowed.only(texts))));
    }

    /**
     * Returns the genotypes of this set whose expressions satisfy a condition on loci.
     *
     * @param expressions allowed expressions by locus
     * @return the narrower set
     */
    public GenotypeSet showing(Condition expressions) {
        GenotypeSet narrower = this;
        for (Map.Entry<String, Allowed> variable : expressions.variables().entrySet()) {
            Locus locus = model.locus(variable.getKey());
            narrower = narrower.where(
                    locus.id(),
                    locus.pairs().stream()
                            .filter(pair -> variable.getValue().allows(locus.expression(pair, Sex.FEMALE)))
                            .toList());
        }
        return narrower;
    }

    /**
     * Returns the genotypes in both sets.
     *
     * @param other a set of the same model
     * @return the intersection
     */
    public GenotypeSet and(GenotypeSet other) {
        return new GenotypeSet(model, boxes.and(other.boxes));
    }

    /**
     * Returns the genotypes in either set.
     *
     * @param other a set of the same model
     * @return the union
     */
    public GenotypeSet or(GenotypeSet other) {
        return new GenotypeSet(model, boxes.or(other.boxes));
    }

    /**
     * Returns the genotypes of this set that are not in the other.
     *
     * @param other a set of the same model
     * @return the difference
     */
    public GenotypeSet minus(GenotypeSet other) {
        return new GenotypeSet(model, boxes.minus(other.boxes));
    }

    /**
     * Tells whether no genotype is left, which means that what is known contradicts itself under the model.
     *
     * @return true if empty
     */
    public boolean isEmpty() {
        return boxes.isEmpty();
    }

    /**
     * Returns the number of genotypes.
     *
     * @return an exact count
     */
    public BigInteger size() {
        return boxes.size();
    }

    /**
     * Tells whether a genotype is allowed.
     *
     * @param genotype a genotype that covers all loci of the model
     * @return true if it is in the set
     * @throws IllegalArgumentException if a locus is not covered
     */
    public boolean contains(Genotype genotype) {
        Map<String, String> point = new LinkedHashMap<>();
        genotype.pairs().forEach((locus, pair) -> point.put(locus, pair.toString()));
        return boxes.contains(point);
    }

    /**
     * Returns the boxes.
     *
     * @return disjoint boxes, each with the allowed pairs of every locus in model order
     */
    public List<Map<String, List<AllelePair>>> boxes() {
        ImmutableList.Builder<Map<String, List<AllelePair>>> all = ImmutableList.builder();
        for (Condition box : boxes.boxes()) {
            ImmutableMap.Builder<String, List<AllelePair>> loci = ImmutableMap.builder();
            model.loci().forEach((name, locus) -> {
                Allowed allowed = box.variables().get(name);
                loci.put(
                        name,
                        allowed == null
                                ? locus.pairs()
                                : locus.pairs().stream()
                                        .filter(pair -> allowed.allows(pair.toString()))
                                        .toList());
            });
            all.add(loci.buildOrThrow());
        }
        return all.build();
    }

    /**
     * Returns the pairs that some allowed genotype has at a locus.
     *
     * @param locus id of a locus
     * @return pairs in declared order
     */
    public List<AllelePair> pairs(String locus) {
        List<AllelePair> found = new ArrayList<>();
        List<Map<String, List<AllelePair>>> all = boxes();
        for (AllelePair pair : model.locus(locus).pairs()) {
            if (all.stream()
                    .anyMatch(box -> Objects.requireNonNull(box.get(locus)).contains(pair))) {
                found.add(pair);
            }
        }
        return ImmutableList.copyOf(found);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof GenotypeSet that && model.equals(that.model) && boxes.equals(that.boxes);
    }

    @Override
    public int hashCode() {
        return boxes.hashCode();
    }

    /** Returns genotype text where the set has one, else its boxes in words. */
    @Override
    public String toString() {
        return GenotypeText.of(model).print(this).orElseGet(boxes::toString);
    }
}
