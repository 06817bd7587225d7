package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Viability;
import org.geneticsrules.patch.Patch;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.LifeStage;

/**
 * The question what moves from one model to another: which genotypes look otherwise, and which matings give other kits.
 *
 * <pre>{@code
 * Model patched = reader.apply(base, List.of(patch));
 * WhatMoves moves = Comparison.of(base, patched, List.of(patch)).whatMoves();
 * moves.genotypes().smallest().get(0).genotype();   // M/m
 * moves.isNothing();                                // proved, not sampled
 * }</pre>
 *
 * <p>Immutable and thread-safe.
 */
public final class Comparison {

    /** How many examples are given unless another number is asked for. */
    public static final int USUAL_EXAMPLES = 3;

    private static final int MOST_EXAMPLES = 1000;

    private final CompiledModel before;
    private final CompiledModel after;
    private final ImmutableList<Patch> patches;
    private final ImmutableMap<String, String> baseline;
    private final ImmutableSet<String> asked;
    private final Optional<LifeStage> stage;
    private final int examples;

    private Comparison(
            CompiledModel before,
            CompiledModel after,
            Collection<Patch> patches,
            Map<String, String> baseline,
            Collection<String> asked,
            Optional<LifeStage> stage,
            int examples) {
        this.before = before;
        this.after = after;
        this.patches = ImmutableList.copyOf(patches);
        this.baseline = ImmutableMap.copyOf(baseline);
        this.asked = ImmutableSet.copyOf(asked);
        this.stage = stage;
        this.examples = examples;
    }

    /**
     * Compares two models of one catalogue.
     *
     * @param before the first model
     * @param after the second model
     * @return the question about all traits that either models, at every stage of life
     * @throws ProblemsException if the models are not about one catalogue
     */
    public static Comparison of(Model before, Model after) {
        return of(before, after, ImmutableList.of());
    }

    /**
     * Compares a model with what patches make of it.
     *
     * @param base the model
     * @param patched the model with the patches applied
     * @param patches the patches; loci that they add are compared at the baseline alleles that they state
     * @return the question about all traits that either models, at every stage of life
     * @throws ProblemsException if the models are not about one catalogue
     */
    public static Comparison of(Model base, Model patched, Collection<Patch> patches) {
        if (!base.catalogue().reference().equals(patched.catalogue().reference())) {
            Problems problems = new Problems(Stage.REFERENCES);
            problems.add(
                    "other-catalogue",
                    "/catalogue",
                    "model " + base + " speaks of the traits of " + base.catalogue() + ", and model " + patched
                            + " of those of " + patched.catalogue(),
                    "two models of one catalogue");
            problems.throwIfAny();
        }
        Map<String, String> baseline = new LinkedHashMap<>();
        patches.forEach(patch -> baseline.putAll(patch.baseline()));
        return new Comparison(
                CompiledModel.of(base),
                CompiledModel.of(patched),
                patches,
                baseline,
                ImmutableSet.of(),
                Optional.empty(),
                USUAL_EXAMPLES);
    }

    /**
     * Returns the question about some traits.
     *
     * @param traits trait ids; all, if there is none
     * @return a copy
     */
    public Comparison inTraits(Collection<String> traits) {
        return new Comparison(before, after, patches, baseline, traits, stage, examples);
    }

    /**
     * Returns the question about one stage of life.
     *
     * @param when the stage
     * @return a copy
     */
    public Comparison at(LifeStage when) {
        return new Comparison(before, after, patches, baseline, asked, Optional.of(when), examples);
    }

    /**
     * Returns the question about animals that carry an allele unless an example says otherwise: at a locus of one model alone, the only
     * one they carry; at others, the one from which examples are counted to differ.
     *
     * @param locus id of a locus
     * @param allele id of one of its alleles
     * @return a copy
     */
    public Comparison from(String locus, String allele) {
        Map<String, String> more = new LinkedHashMap<>(baseline);
        more.put(locus, allele);
        return new Comparison(before, after, patches, more, asked, stage, examples);
    }

    /**
     * Returns the question with another number of examples.
     *
     * @param most how many examples of each kind are given at most, 1 to 1000
     * @return a copy
     * @throws IllegalArgumentException if the number is outside this range
     */
    public Comparison showing(int most) {
        if (most < 1 || most > MOST_EXAMPLES) {
            throw new IllegalArgumentException(
                    "1 to " + MOST_EXAMPLES + " examples can be shown, but " + most + " were asked for");
        }
        return new Comparison(before, after, patches, baseline, asked, stage, most);
    }

    /**
     * Answers the question.
     *
     * @return what moves, the smallest examples first, or the proof that nothing does
     * @throws ProblemsException if a trait, locus or allele is unknown, no trait is modelled by both, a locus cannot be compared, or a
     *     stated stage lacks what the models depend on
     * @throws TooLargeException if an exact answer would take too much work
     */
    public WhatMoves whatMoves() {
        stage.ifPresent(before.model().catalogue()::check);
        Set<String> traits = asked();
        List<String> both = traits.stream()
                .filter(before.model().visibleTraits()::contains)
                .filter(after.model().visibleTraits()::contains)
                .toList();
        if (both.isEmpty()) {
            Problems problems = new Problems(Stage.MEANING);
            problems.add(
                    "nothing-to-compare",
                    "",
                    "none of the traits " + String.join(", ", traits) + " is modelled by both " + before.model()
                            + " and " + after.model(),
                    "a trait that both model");
            problems.throwIfAny();
        }
        ComparedLoci loci = new ComparedLoci(before.model(), after.model(), read(both), baseline);
        List<Change> changes = Differences.of(before.model(), after.model(), patches);
        List<Moment> moments = Moments.of(before.model(), after.model(), both, stage);
        boolean bySex = bySex(before, both) || bySex(after, both);
        Moved<MovedGenotype> genotypes = Moved.nothing();
        Moved<MovedMating> matings = Moved.nothing();
        List<Moment> examined = new ArrayList<>();
        for (Moment moment : moments) {
            if (genotypes.isEmpty() || matings.isEmpty()) {
                Search search = new Search(before, after, both, moment, bySex, loci, changes);
                genotypes = genotypes.isEmpty() ? search.genotypes(examples) : genotypes;
                matings = matings.isEmpty() ? search.matings(examples) : matings;
                examined.add(moment);
            }
        }
        Map<String, String> reference = new LinkedHashMap<>();
        loci.list().forEach(locus -> reference.put(locus.id(), locus.reference()));
        return new WhatMoves(
                before.model().reference(),
                after.model().reference(),
                changes,
                ImmutableSet.copyOf(both),
                only(traits, before.model(), after.model()),
                only(traits, after.model(), before.model()),
                reference,
                loci.limits(),
                stage,
                examined,
                genotypes,
                matings);
    }

    private Set<String> asked() {
        Set<String> modelled = new LinkedHashSet<>(before.model().visibleTraits());
        modelled.addAll(after.model().visibleTraits());
        Problems problems = new Problems(Stage.REFERENCES);
        for (String trait : asked) {
            if (!modelled.contains(trait)) {
                problems.unknown(
                        "unknown-trait", Pointer.of("traits", trait), "trait of either model", trait, modelled);
            }
        }
        problems.throwIfAny();
        return asked.isEmpty() ? modelled : asked;
    }

    private static Set<String> only(Set<String> traits, Model one, Model other) {
        return traits.stream()
                .filter(one.visibleTraits()::contains)
                .filter(trait -> !other.visibleTraits().contains(trait))
                .collect(ImmutableSet.toImmutableSet());
    }

    /** The loci that the traits depend on at any stage, and those at which animals may be lost. */
    private Set<String> read(List<String> traits) {
        Set<String> read = new LinkedHashSet<>();
        for (CompiledModel compiled : List.of(before, after)) {
            read.addAll(compiled.lociRead(traits));
            compiled.model().viability().values().stream().map(Viability::locus).forEach(read::add);
        }
        return read;
    }

    private static boolean bySex(CompiledModel compiled, List<String> traits) {
        Model model = compiled.model();
        return compiled.dependsOnSex(View.of(traits))
                || model.viability().values().stream().anyMatch(one -> {
                    Locus locus = model.locus(one.locus());
                    return one.sex().isPresent()
                            || locus.dependsOnSex()
                            || locus.transmission().heterogametic().isPresent();
                });
    }
}
