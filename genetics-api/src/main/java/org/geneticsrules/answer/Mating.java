package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.cross.Parent;
import org.geneticsrules.cross.Sires;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.Population;
import org.geneticsrules.problem.Problem;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;
import org.geneticsrules.trait.Trait;

/**
 * A question about a mating, checked against the model: what is looked at, what is evidence, and who the parents are.
 *
 * @param view what is looked at
 * @param event the look asked for in particular
 * @param seen what of the kits seen is evidence
 * @param takenAsTold traits taken to be read late enough
 * @param takenAsLit traits of the kits seen taken to be read in a light to tell them in
 * @param notices what says nothing, or is left out
 */
record Mating(
        CompiledModel compiled,
        MatingQuestion question,
        View view,
        Optional<Phenotype> event,
        List<Sighting> seen,
        Set<String> takenAsTold,
        Set<Trait> takenAsLit,
        List<String> notices) {

    private static final int MOST_KITS = 30;

    /** Where all traits are asked for, no more looks than this are foreseen at once, by no more tests. */
    private static final int MOST_LOOKS = 200;

    private static final int MOST_TESTS = 2_000;

    Mating {
        seen = ImmutableList.copyOf(seen);
        takenAsTold = ImmutableSet.copyOf(takenAsTold);
        takenAsLit = ImmutableSet.copyOf(takenAsLit);
        notices = ImmutableList.copyOf(notices);
    }

    /**
     * Checks a question.
     *
     * @throws ProblemsException if something asked or stated is unknown or cannot be, with all problems of a stage at once
     */
    static Mating of(Answers answers, MatingQuestion question) {
        CompiledModel compiled = answers.compiled();
        Optional<Phenotype> event = question.event().map(look -> Evident.check(compiled.model(), look));
        Set<String> named = new LinkedHashSet<>(question.traits());
        event.ifPresent(look -> named.addAll(look.traits()));
        Stages stages = Stages.ofYoung(
                compiled,
                question.sires().males().stream().map(male -> male.as(Sex.MALE)).toList(),
                question.dam().as(Sex.FEMALE));
        Asked asked = Asked.of(
                compiled, "the " + answers.young().many() + " of this mating", named, question.stage(), stages);
        if (named.isEmpty()) {
            LifeStage stage = asked.stage();
            asked = asked.together(
                    traits -> Asked.fits(compiled, new View(traits, stage, question.census()), MOST_LOOKS, MOST_TESTS));
        }
        checkLitter(question);
        checkSexes(question);
        Set<String> taken = new LinkedHashSet<>(asked.takenAsTold());
        Set<Trait> lit = new LinkedHashSet<>();
        Set<String> notices = new LinkedHashSet<>(asked.notices());
        List<Sighting> seen = new ArrayList<>();
        List<Problem> problems = new ArrayList<>();
        String whose = " of " + answers.young().any() + " seen";
        for (Sighting kit : question.seen()) {
            Sighting stated = kit.stage().equals(LifeStage.unstated())
                    ? new Sighting(question.stage(), kit.look(), kit.light())
                    : kit;
            Evident evident = Evident.NOTHING.and(compiled.model(), whose, Evident.check(compiled.model(), stated));
            notices.addAll(evident.notices());
            taken.addAll(evident.takenAsTold());
            lit.addAll(evident.takenAsLit());
            Sighting evidence = evident.sightings().isEmpty()
                    ? Sighting.of(Phenotype.unspecified())
                    : evident.sightings().get(0);
            try {
                LifeStage settled = stages.settle(
                        evidence.stage(),
                        when -> compiled.matching(List.of(new Sighting(when, evidence.look())), question.census()));
                seen.add(new Sighting(settled, evidence.look()));
            } catch (ProblemsException e) {
                e.problems()
                        .forEach(problem ->
                                problems.add(Asked.about(answers.young().any() + " seen", problem)));
            }
        }
        if (!problems.isEmpty()) {
            throw new ProblemsException(new ArrayList<>(new LinkedHashSet<>(problems)));
        }
        View view = new View(asked.traits(), asked.stage(), question.census());
        return new Mating(compiled, question, view, event, seen, taken, lit, new ArrayList<>(notices));
    }

    private static void checkLitter(MatingQuestion question) {
        Problems problems = new Problems(Stage.MEANING);
        if (question.litter().isPresent() && question.event().isEmpty()) {
            problems.add("litter-without-look", "", "a litter was asked about, but no look to count in it", "a look");
        }
        question.litter().map(LitterSize::kits).ifPresent(kits -> {
            boolean none = kits.outcomes().stream().allMatch(size -> size == 0);
            if (none || kits.outcomes().stream().anyMatch(size -> size > MOST_KITS)) {
                problems.add(
                        "litter-size",
                        "",
                        "a litter of " + question.litter().orElseThrow().name() + " was asked about",
                        "1 to " + MOST_KITS);
            }
        });
        problems.throwIfAny();
    }

    private static void checkSexes(MatingQuestion question) {
        Problems problems = new Problems(Stage.MEANING);
        for (Animal male : question.sires().males()) {
            if (male.sex().filter(sex -> sex == Sex.FEMALE).isPresent()) {
                problems.add("wrong-sex", "", "a sire is stated to be female", "a male");
            }
        }
        if (question.dam().sex().filter(sex -> sex == Sex.MALE).isPresent()) {
            problems.add("wrong-sex", "", "the dam is stated to be male", "a female");
        }
        problems.throwIfAny();
    }

    /** What is looked at to tell the look asked for. */
    View eventView() {
        return new View(ImmutableList.copyOf(event.orElseThrow().traits()), view.stage(), view.census());
    }

    /** The loci that bear on what is asked, in model order. */
    Set<String> lociRead() {
        return compiled.lociRead(view);
    }

    /** Whether any kits are lost before they are counted. */
    boolean losesAny() {
        return view.census() != Census.CONCEIVED
                && compiled.survival(view.census()).loses();
    }

    UncertainCross cross() {
        return cross(Optional.empty());
    }

    /** The mating; parents that name no population of their own come from one, if one is given. */
    UncertainCross cross(Optional<Population> unstated) {
        List<Parent> males = question.sires().males().stream()
                .map(male -> parent(male, unstated))
                .toList();
        return UncertainCross.of(
                compiled,
                new Sires(males, question.sires().access(), question.sires().perKit()),
                parent(question.dam(), unstated));
    }

    private static Parent parent(Animal animal, Optional<Population> unstated) {
        Parent parent = animal.parent();
        return animal.population().isPresent()
                ? parent
                : unstated.map(parent::from).orElse(parent);
    }

    /** All parents, males first, as animals of their sex. */
    List<Animal> parents() {
        ImmutableList.Builder<Animal> parents = ImmutableList.builder();
        question.sires().males().forEach(male -> parents.add(male.as(Sex.MALE)));
        return parents.add(question.dam().as(Sex.FEMALE)).build();
    }

    /** A parent as it was stated, of whatever sex. */
    Animal stated(int parent) {
        List<Animal> males = question.sires().males();
        return parent < males.size() ? males.get(parent) : question.dam();
    }

    /** What to call a parent. */
    String role(int parent) {
        int males = question.sires().males().size();
        if (parent == males) {
            return "dam";
        }
        return males == 1 ? "sire" : "male " + (parent + 1);
    }
}
