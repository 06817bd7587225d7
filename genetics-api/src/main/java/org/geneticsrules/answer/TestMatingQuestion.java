package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.LifeStage;

/**
 * Which test matings would show what an animal hides, and how many young would that take?
 *
 * <pre>{@code
 * TestMatingQuestion question = TestMatingQuestion.of(hob.ofSex(Sex.MALE))
 *         .carrying(List.of(HiddenAllele.find(model, "albino")))
 *         .by(List.of(TestMate.of("an albino", jill)))
 *         .withConfidence(List.of(Probability.of(19, 20)));
 * }</pre>
 *
 * @param animal what is known of the animal, its sex among it
 * @param alleles what it is tested for; empty for all that it may carry unseen
 * @param mates the mates in question; empty for those the model itself suggests
 * @param traits the traits that the young are looked at for, together; empty for the one that tells most
 * @param stage when the young are looked at
 * @param confidences with which chances a carrier shall be found out, each below 1
 * @param litter how many young a litter has, to count litters too
 * @param before how likely the animal is to carry it before the test, if that is known
 * @param inSpiteOf names of cautions that exclude a mating, and shall not
 */
public record TestMatingQuestion(
        Animal animal,
        List<HiddenAllele> alleles,
        List<TestMate> mates,
        Set<String> traits,
        LifeStage stage,
        List<Probability> confidences,
        Optional<LitterSize> litter,
        Optional<Probability> before,
        Set<String> inSpiteOf) {

    private static final List<Probability> USUAL = List.of(Probability.of(19, 20), Probability.of(99, 100));

    /**
     * Copies the collections.
     *
     * @param animal the animal
     * @param alleles what it is tested for
     * @param mates the mates in question
     * @param traits what the young are looked at for
     * @param stage when they are looked at
     * @param confidences the chances with which a carrier shall be found out
     * @param litter how many young a litter has
     * @param before how likely the animal is to carry it
     * @param inSpiteOf cautions that shall not exclude
     * @throws IllegalArgumentException if there is no confidence, or one is 1
     */
    public TestMatingQuestion {
        alleles = ImmutableList.copyOf(alleles);
        mates = ImmutableList.copyOf(mates);
        traits = ImmutableSet.copyOf(traits);
        confidences = ImmutableList.copyOf(confidences);
        inSpiteOf = ImmutableSet.copyOf(inSpiteOf);
        if (confidences.isEmpty() || confidences.stream().anyMatch(Probability::isOne)) {
            throw new IllegalArgumentException(
                    "at least one confidence is needed, and each must be below 1, but got " + confidences);
        }
    }

    /**
     * Asks for all that an animal may carry unseen, by mates that the model suggests, with 95 % and 99 % confidence.
     *
     * @param animal what is known of the animal
     * @return the question
     */
    public static TestMatingQuestion of(Animal animal) {
        return new TestMatingQuestion(
                animal,
                ImmutableList.of(),
                ImmutableList.of(),
                ImmutableSet.of(),
                LifeStage.unstated(),
                USUAL,
                Optional.empty(),
                Optional.empty(),
                ImmutableSet.of());
    }

    /**
     * Narrows the question to some alleles.
     *
     * @param tested what the animal is tested for, each by itself
     * @return a copy
     */
    public TestMatingQuestion carrying(List<HiddenAllele> tested) {
        return new TestMatingQuestion(animal, tested, mates, traits, stage, confidences, litter, before, inSpiteOf);
    }

    /**
     * Narrows the question to some mates.
     *
     * @param described the mates
     * @return a copy
     */
    public TestMatingQuestion by(List<TestMate> described) {
        return new TestMatingQuestion(
                animal, alleles, described, traits, stage, confidences, litter, before, inSpiteOf);
    }

    /**
     * Says what the young are looked at for.
     *
     * @param asked trait ids
     * @return a copy
     */
    public TestMatingQuestion inTraits(Collection<String> asked) {
        return new TestMatingQuestion(
                animal, alleles, mates, ImmutableSet.copyOf(asked), stage, confidences, litter, before, inSpiteOf);
    }

    /**
     * Says when the young are looked at.
     *
     * @param when the stage
     * @return a copy
     */
    public TestMatingQuestion at(LifeStage when) {
        return new TestMatingQuestion(animal, alleles, mates, traits, when, confidences, litter, before, inSpiteOf);
    }

    /**
     * Says how sure the test shall be.
     *
     * @param wanted the chances with which a carrier shall be found out, each below 1
     * @return a copy
     * @throws IllegalArgumentException if there is none, or one is 1
     */
    public TestMatingQuestion withConfidence(List<Probability> wanted) {
        return new TestMatingQuestion(animal, alleles, mates, traits, stage, wanted, litter, before, inSpiteOf);
    }

    /**
     * Asks for litters as well as for young.
     *
     * @param size how many young a litter has
     * @return a copy
     */
    public TestMatingQuestion inLittersOf(LitterSize size) {
        return new TestMatingQuestion(
                animal, alleles, mates, traits, stage, confidences, Optional.of(size), before, inSpiteOf);
    }

    /**
     * Says how likely the animal is to carry what it is tested for, so that the answer can say too what is left to believe.
     *
     * @param chance for example 2/3 for a sib of an animal with both doses of a recessive allele, whose parents have none to show
     * @return a copy
     */
    public TestMatingQuestion likely(Probability chance) {
        return new TestMatingQuestion(
                animal, alleles, mates, traits, stage, confidences, litter, Optional.of(chance), inSpiteOf);
    }

    /**
     * Asks for matings in spite of some cautions, by name.
     *
     * @param names names of cautions that exclude a mating, or {@value TestResult#LOST_YOUNG}
     * @return a copy
     */
    public TestMatingQuestion inSpiteOf(Collection<String> names) {
        return new TestMatingQuestion(
                animal, alleles, mates, traits, stage, confidences, litter, before, ImmutableSet.copyOf(names));
    }

    /** The same question under another model. */
    TestMatingQuestion under(CompiledModel other) {
        return new TestMatingQuestion(
                animal.under(other),
                alleles.stream().map(allele -> allele.under(other.model())).toList(),
                mates.stream().map(mate -> mate.under(other)).toList(),
                traits,
                stage,
                confidences,
                litter,
                before,
                inSpiteOf);
    }
}
