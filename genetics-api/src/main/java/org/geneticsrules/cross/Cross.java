package org.geneticsrules.cross;

import com.google.common.collect.ImmutableList;
import java.math.BigInteger;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.explanation.MatingExplanation;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Diagram;
import org.geneticsrules.expression.View;
import org.geneticsrules.expression.Weights;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Locus;
import org.geneticsrules.model.Model;
import org.geneticsrules.probability.Approximation;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * A mating of two parents whose genotypes are known at every locus that is asked about.
 *
 * <pre>{@code
 * Cross cross = Cross.of(model, Genotype.parse(model, "C/c B/b"), Genotype.parse(model, "C/c B/b"));
 * cross.phenotypes(List.of("hue"));          // {hue: black=9/16, hue: brown=3/16, hue: none seen=1/4}
 * cross.atLeastOne(Phenotype.of("eye", "pink"), 8);
 * }</pre>
 *
 * <p>Kits of known parents are independent, unless the phase of linked loci is not known. Chances are per kit born, unless a
 * {@link View} says otherwise.
 *
 * <p>Immutable and thread-safe.
 */
public final class Cross {

    private final CompiledModel compiled;
    private final Genotype sire;
    private final Genotype dam;

    private Cross(CompiledModel compiled, Genotype sire, Genotype dam) {
        this.compiled = compiled;
        this.sire = sire;
        this.dam = dam;
    }

    /**
     * Returns the mating of two parents.
     *
     * @param model the model of inheritance
     * @param sire the father's genotype
     * @param dam the mother's genotype
     * @return the mating
     */
    public static Cross of(Model model, Genotype sire, Genotype dam) {
        return of(CompiledModel.of(model), sire, dam);
    }

    /**
     * Returns the mating of two parents under a model that is compiled already.
     *
     * @param compiled the model of inheritance
     * @param sire the father's genotype
     * @param dam the mother's genotype
     * @return the mating
     */
    public static Cross of(CompiledModel compiled, Genotype sire, Genotype dam) {
        return new Cross(compiled, sire, dam);
    }

    /**
     * Returns the father's genotype.
     *
     * @return the genotype as given
     */
    public Genotype sire() {
        return sire;
    }

    /**
     * Returns the mother's genotype.
     *
     * @return the genotype as given
     */
    public Genotype dam() {
        return dam;
    }

    /**
     * Returns the chances of what a kit, born or not, may carry at one locus.
     *
     * @param locus id of a locus that both parents' genotypes cover
     * @return the distribution of pairs, in declared order; at a sex-linked locus those of daughters and of sons
     * @throws IllegalArgumentException if a parent's genotype does not cover the locus
     */
    public Distribution<AllelePair> segregation(String locus) {
        return genotypes(ImmutableList.of(locus)).map(kit -> kit.pair(locus).orElseThrow());
    }

    /**
     * Returns the chances of the genotypes that kits, born or not, may have at some loci.
     *
     * @param loci loci that both parents' genotypes cover
     * @return the distribution of genotypes, of which the phase is not told
     * @throws IllegalArgumentException if a parent's genotype does not cover a locus
     * @throws TooLargeException if there are too many genotypes to list
     */
    public Distribution<Genotype> genotypes(Collection<String> loci) {
        return new KitGenotypes(compiled.model(), box(sire, Sex.MALE, loci), box(dam, Sex.FEMALE, loci)).of(loci);
    }

    /**
     * Returns the chances of what a kit may show in all visible traits of the model.
     *
     * @return the distribution of phenotypes
     * @throws IllegalArgumentException if a parent's genotype does not cover a locus read
     * @throws TooLargeException if there are too many phenotypes to list
     */
    public Distribution<Phenotype> phenotypes() {
        return phenotypes(compiled.diagram(), compiled.everything());
    }

    /**
     * Returns the chances of what a kit may show in some traits.
     *
     * @param traits the traits asked for
     * @return the distribution of phenotypes, in the declared order of states; where the model makes no claim about a trait for some
     *     kits, their phenotype does not name it
     * @throws IllegalArgumentException if a trait is unknown or a parent's genotype does not cover a locus read
     * @throws TooLargeException if there are too many phenotypes to list
     */
    public Distribution<Phenotype> phenotypes(Collection<String> traits) {
        return phenotypes(View.of(traits));
    }

    /**
     * Returns the chances of what a kit may show.
     *
     * @param view what is looked at
     * @return the distribution of phenotypes among the kits that are counted
     * @throws IllegalArgumentException if a trait is unknown, a parent's genotype does not cover a locus read, or no kit is ever counted
     * @throws org.geneticsrules.problem.ProblemsException if the stage does not state what the model needs
     * @throws TooLargeException if there are too many phenotypes to list
     */
    public Distribution<Phenotype> phenotypes(View view) {
        return phenotypes(compiled.diagram(view), view);
    }

    private Distribution<Phenotype> phenotypes(Diagram<Phenotype> diagram, View view) {
        Segregations simple = Segregations.of(compiled, diagram);
        if (simple.apply()) {
            return diagram.distribution(simple.mate(sire, dam));
        }
        Optional<Weights> kits =
                KnownParents.of(compiled, diagram).young(sire, dam).map(young -> young.weigh(diagram));
        if (kits.isPresent() && kits.get().kept().signum() > 0) {
            return diagram.distribution(kits.get());
        }
        return known(diagram.loci()).probable(view).orElseThrow(() -> uncounted(view));
    }

    /**
     * Returns the chances of what a kit may show in all visible traits of the model, in floating point.
     *
     * @return the chances, with a bound on their error
     * @throws IllegalArgumentException if a parent's genotype does not cover a locus read
     */
    public Approximation<Phenotype> approximate() {
        return approximate(compiled.everything());
    }

    /**
     * Returns the same as {@link #phenotypes(View)} in floating point, for questions that are asked of very many matings.
     *
     * @param view what is looked at
     * @return the chances among the kits that are counted, with a bound on their error
     * @throws IllegalArgumentException as {@link #phenotypes(View)}
     */
    public Approximation<Phenotype> approximate(View view) {
        Diagram<Phenotype> diagram = compiled.diagram(view);
        Segregations simple = Segregations.of(compiled, diagram);
        if (simple.apply()) {
            return diagram.approximate(simple.mate(sire, dam));
        }
        Optional<Approximation<Phenotype>> kits = KnownParents.of(compiled, diagram)
                .young(sire, dam)
                .flatMap(young -> young.approximate(diagram).given());
        if (kits.isPresent()) {
            return kits.get();
        }
        return known(diagram.loci()).approximate(view).orElseThrow(() -> uncounted(view));
    }

    private IllegalArgumentException uncounted(View view) {
        return new IllegalArgumentException("no kit of " + this + " is ever "
                + view.census().word() + ", so that nothing can be said of what such kits show");
    }

    /** The same parents, as the general engine takes them. */
    private UncertainCross known(Collection<String> loci) {
        loci.forEach(name -> {
            pair(sire, compiled.model().locus(name), "sire");
            pair(dam, compiled.model().locus(name), "dam");
        });
        return UncertainCross.of(compiled, Parent.of(compiled.model(), sire), Parent.of(compiled.model(), dam));
    }

    /**
     * Returns the chance that a kit shows a phenotype.
     *
     * @param description a full or partial phenotype
     * @return the chance that every state named is shown; kits for which the model makes no claim do not count
     * @throws IllegalArgumentException if a trait is unknown or a parent's genotype does not cover a locus read
     */
    public Probability probability(Phenotype description) {
        return phenotypes(description.traits()).probability(description);
    }

    /**
     * Returns the chances of how many kits of a litter show a phenotype.
     *
     * @param description a full or partial phenotype
     * @param kits number of kits, at least 0
     * @return the distribution of the number, from 0 to {@code kits}: binomial, or a mixture where the phase of a parent is not known
     */
    public Distribution<Integer> count(Phenotype description, int kits) {
        return count(View.of(description.traits()), description, LitterSize.of(kits));
    }

    /**
     * Returns the chances of how many kits of a litter show a look.
     *
     * @param view what is looked at
     * @param look the look in these traits
     * @param size how many kits there will be
     * @return the distribution of the number
     */
    public Distribution<Integer> count(View view, Phenotype look, LitterSize size) {
        Diagram<Phenotype> diagram = compiled.diagram(view);
        if (Segregations.of(compiled, diagram).apply()) {
            return size.count(phenotypes(diagram, view).probability(look));
        }
        return known(diagram.loci()).count(view, look, size, List.of()).orElseThrow();
    }

    /**
     * Returns the chance that at least one kit of a litter shows a phenotype.
     *
     * @param description a full or partial phenotype
     * @param kits number of kits, at least 0
     * @return 1 - (1 - p)^kits, or its mean where the phase of a parent is not known
     */
    public Probability atLeastOne(Phenotype description, int kits) {
        View view = View.of(description.traits());
        LitterSize size = LitterSize.of(kits);
        Diagram<Phenotype> diagram = compiled.diagram(view);
        if (Segregations.of(compiled, diagram).apply()) {
            return size.none(phenotypes(diagram, view).probability(description)).complement();
        }
        Distribution<Probability> chances =
                known(diagram.loci()).chance(view, description, List.of()).orElseThrow();
        return Mixture.mean(chances.map(size::none)).complement();
    }

    /**
     * Returns the share of the kits conceived that are lost before they are counted.
     *
     * @param census until when
     * @return the share
     */
    public Probability lostShare(Census census) {
        return known(compiled.survival(census).loci()).lostShare(census).orElseThrow();
    }

    /**
     * Returns the Punnett square of some loci.
     *
     * @param loci loci that both parents' genotypes cover; sex-linked, linked or neither
     * @return the square
     * @throws IllegalArgumentException if a parent's genotype does not cover a locus
     * @throws TooLargeException if a parent makes more than {@link PunnettSquare#MOST_GAMETES} distinct gametes
     */
    public PunnettSquare square(Collection<String> loci) {
        return PunnettSquare.of(compiled.model(), box(sire, Sex.MALE, loci), box(dam, Sex.FEMALE, loci), loci);
    }

    /**
     * Returns the reasons behind {@link #phenotypes(Collection)}, from the same diagram.
     *
     * @param traits the traits asked for
     * @return what the parents pass on, the ways to each phenotype, what stays hidden and which statements all this rests on
     * @throws IllegalArgumentException if a trait is unknown or a parent's genotype does not cover a locus read
     * @throws TooLargeException if there are too many ways to list
     */
    public MatingExplanation explain(Collection<String> traits) {
        return explain(View.of(traits));
    }

    /**
     * Returns the reasons behind {@link #phenotypes(View)}, from the same diagram.
     *
     * @param view what is looked at
     * @return what the parents pass on, the ways to each phenotype, what stays hidden and which statements all this rests on
     * @throws IllegalArgumentException if a trait is unknown or a parent's genotype does not cover a locus read
     * @throws TooLargeException if there are too many ways to list
     */
    public MatingExplanation explain(View view) {
        return known(compiled.diagram(view).loci()).explain(view).orElseThrow();
    }

    private ParentBox box(Genotype parent, Sex sex, Collection<String> loci) {
        Map<String, BigInteger[]> weights = new LinkedHashMap<>();
        for (String name : loci) {
            Locus locus = compiled.model().locus(name);
            AllelePair pair = pair(parent, locus, sex == Sex.MALE ? "sire" : "dam");
            BigInteger[] one = new BigInteger[locus.pairs().size()];
            Arrays.fill(one, BigInteger.ZERO);
            one[locus.pairs().indexOf(pair)] = BigInteger.ONE;
            weights.put(name, one);
        }
        return new ParentBox(sex, BigInteger.ONE, weights, parent.phase());
    }

    private static AllelePair pair(Genotype parent, Locus locus, String role) {
        Optional<AllelePair> known = parent.pair(locus.id());
        if (known.isEmpty() && locus.transmission().strands(role.equals("sire") ? Sex.MALE : Sex.FEMALE) == 0) {
            return locus.of();
        }
        return known.orElseThrow(() -> Segregations.uncovered(role, parent, locus));
    }

    /** Returns the parents' genotypes with a multiplication sign. */
    @Override
    public String toString() {
        return sire + " \u00d7 " + dam;
    }
}
