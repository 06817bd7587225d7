package org.geneticsrules.cross;

import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.problem.TooLargeException;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * A test mating: whether an animal is of some set of genotypes, for example a carrier, shall be seen from its young.
 *
 * <p>Stated are what the animal is <i>if</i> it is what it is tested for, and its mates. The test ends when a kit shows a sign. How
 * likely none does, though the animal is what it is tested for, is a {@link Detection}.
 *
 * <pre>{@code
 * Parent carrier = Parent.of(model, Genotype.parse(model, "C/c"));
 * Mate daughters = Mate.ownYoung(Parent.of(model, Genotype.parse(model, "C/C")));
 * Detection test = TestMating.of(compiled, Sex.MALE, carrier, daughters)
 *         .byManyMates(View.of(List.of("eye")), Set.of(Phenotype.of("eye", "pink")), LitterSize.of(1))
 *         .orElseThrow();
 * test.fewest(Probability.of(1, 20));     // 23 daughters, one kit of each
 * }</pre>
 *
 * <p>Whatever is not known for certain is weighed by the population that is named with it. Mates are such as have lived to be parents
 * and can have kits that are counted with the animal.
 *
 * <p>This tells what a test mating would take; it does not advise one. Every kit needs a home, the young of parent and own young are
 * inbred (F = 1/4 where nothing else is related), and records already held or a DNA test may answer the question without any kit.
 *
 * <p>Immutable and thread-safe.
 */
public final class TestMating {

    private final CompiledModel compiled;
    private final Sex sex;
    private final Parent tested;
    private final Mate mate;

    private TestMating(CompiledModel compiled, Sex sex, Parent tested, Mate mate) {
        this.compiled = compiled;
        this.sex = sex;
        this.tested = tested;
        this.mate = mate;
    }

    /**
     * Returns a test mating.
     *
     * @param compiled the model of inheritance
     * @param sex sex of the animal that is tested; its mates are of the other
     * @param tested what the animal is if it is what it is tested for
     * @param mate its mates
     * @return the test mating
     */
    public static TestMating of(CompiledModel compiled, Sex sex, Parent tested, Mate mate) {
        return new TestMating(compiled, sex, tested, mate);
    }

    /**
     * Returns the looks that prove the case: kits of the animal may show them, and no kit could if the animal were something else.
     * Neither is weighed, and mutation is left out.
     *
     * @param view what is looked at
     * @param otherwise what the animal is if it is not what it is tested for
     * @return looks in these traits, each a sign by itself; none if no single kit can prove anything
     * @throws TooLargeException if there are too many kinds of parents to go through
     */
    public Set<Phenotype> proofs(View view, Parent otherwise) {
        Set<Phenotype> proofs = new LinkedHashSet<>(possible(view, tested));
        proofs.removeAll(possible(view, otherwise));
        return ImmutableSet.copyOf(proofs);
    }

    /**
     * Returns the loci at which the chances of a test need frequencies that are not named.
     *
     * @param view what is looked at
     * @return locus ids in model order; none if {@link #byOneMate} can be asked
     */
    public List<String> missingFrequencies(View view) {
        return question(view, tested, true)
                .map(question -> question.missingFrequencies(tested))
                .orElse(List.of());
    }

    /**
     * Returns the detection by litter after litter of one mate.
     *
     * @param view what is looked at
     * @param signs looks in these traits that end the test, each by itself; a trait that one does not name is one for which the model
     *     makes no claim
     * @param litter how many kits of each litter are looked at; a litter of one kit to count kits
     * @return the detection, whose steps are litters; empty if there can be no such animal, mate or kit
     * @throws IllegalArgumentException if a sign names a trait that is not looked at
     * @throws org.geneticsrules.problem.ProblemsException if an animal that is not fully known has no frequencies at a locus that matters
     * @throws TooLargeException if there are too many kinds of parents to go through
     */
    public Optional<Detection> byOneMate(View view, Collection<Phenotype> signs, LitterSize litter) {
        return chances(view, signs)
                .map(rows -> Detection.of(rows.flatMap(row -> row).map(litter::none)));
    }

    /**
     * Returns the detection by several mates, each of which has one litter.
     *
     * @param view what is looked at
     * @param signs looks in these traits that end the test, each by itself; a trait that one does not name is one for which the model
     *     makes no claim
     * @param litter how many kits of each litter are looked at
     * @return the detection, whose steps are mates; empty if there can be no such animal, mate or kit
     * @throws IllegalArgumentException if a sign names a trait that is not looked at
     * @throws org.geneticsrules.problem.ProblemsException if an animal that is not fully known has no frequencies at a locus that matters
     * @throws TooLargeException if there are too many kinds of parents to go through
     */
    public Optional<Detection> byManyMates(View view, Collection<Phenotype> signs, LitterSize litter) {
        return chances(view, signs).map(rows -> Detection.of(rows.map(row -> Mixture.mean(row.map(litter::none)))));
    }

    private Optional<Distribution<Distribution<Probability>>> chances(View view, Collection<Phenotype> signs) {
        for (Phenotype sign : signs) {
            if (!view.traits().containsAll(sign.traits())) {
                throw new IllegalArgumentException("a sign names only traits that are looked at, here " + view.traits()
                        + ", but one was \"" + sign + "\"");
            }
        }
        return question(view, tested, true).flatMap(question -> question.chances(tested, ImmutableSet.copyOf(signs)));
    }

    private Set<Phenotype> possible(View view, Parent animal) {
        return question(view, animal, false)
                .map(question -> question.possible(animal))
                .orElse(Set.of());
    }

    private Optional<TestQuestion> question(View view, Parent animal, boolean weighted) {
        return TestQuestion.of(compiled, sex, mate, view, animal, weighted);
    }

    /** Returns what is known of the animal and of its mates. */
    @Override
    public String toString() {
        return sex.word() + " " + tested.genotypes() + " tested by " + mate;
    }
}
