package org.geneticsrules.answer;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.cross.Sires;
import org.geneticsrules.cross.UncertainCross;
import org.geneticsrules.explanation.Reason;
import org.geneticsrules.explanation.Way;
import org.geneticsrules.expression.Census;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.Level;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.model.Viability;
import org.geneticsrules.trait.LifeStage;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.geneticsrules.trait.Sighting;

/** What goes with every answer about a mating, whatever its numbers: the question, what is given, assumptions and cautions. */
final class MatingFrame {

    private final Answers answers;
    private final CompiledModel compiled;
    private final Model model;
    private final Mating mating;
    private final MatingQuestion asked;

    MatingFrame(Answers answers, Mating mating) {
        this.answers = answers;
        this.compiled = answers.compiled();
        this.model = answers.model();
        this.mating = mating;
        this.asked = mating.question();
    }

    Question question() {
        return new Question(
                "mating",
                text(),
                mating.view().traits(),
                asked.stage(),
                asked.census(),
                mating.event(),
                mating.seen(),
                answers.young());
    }

    private String text() {
        String traits = mating.view().traits().size() == model.visibleTraits().size()
                ? "all traits the model rules"
                : String.join(", ", mating.view().traits());
        return mating.event()
                .map(event -> "How likely is " + answers.young().any() + " of this mating to show "
                        + Verdicts.words(event, event.traits()) + "?")
                .orElse("What may the " + answers.young().many() + " of this mating show in " + traits + "?");
    }

    /** Adds all that does not depend on the numbers. */
    void complete(Draft draft, UncertainCross cross, boolean weighted) {
        given(draft.given);
        assumptions(draft, weighted);
        draft.cautions.addAll(cautions(cross));
        boolean sexAsked = mating.view().traits().contains(Sex.VARIABLE);
        if (!sexAsked && !draft.outcomes.isEmpty() && compiled.dependsOnSex(mating.view())) {
            draft.notices.add("daughters and sons differ in what is asked; ask for sex too to see them apart");
        }
    }

    private void given(List<String> given) {
        List<Animal> parents = mating.parents();
        for (int i = 0; i < parents.size(); i++) {
            String role = mating.role(i);
            if (parents.get(i).given().isEmpty()) {
                given.add(role + ": nothing stated");
            }
            parents.get(i).given().forEach(fact -> given.add(role + ": " + fact));
        }
        for (Sighting kit : asked.seen()) {
            given.add(answers.young().one() + " seen: " + kit);
        }
        if (!asked.stage().equals(LifeStage.unstated())) {
            given.add("looked at: " + asked.stage());
        }
        if (asked.census() != Census.BORN) {
            given.add("counted: all that are " + asked.census().word());
        }
        asked.litter().ifPresent(size -> given.add("litter: " + sizes(size)));
        given.add("relation of the parents: " + asked.relation().word());
    }

    private String sizes(LitterSize size) {
        Set<Integer> kits = size.kits().outcomes();
        int first = kits.iterator().next();
        return kits.size() == 1 ? first + " " + answers.young().of(first) : size.name();
    }

    private void assumptions(Draft draft, boolean weighted) {
        Set<String> read = mating.lociRead();
        Assumptions made = draft.assumptions.model(model).parentage(asked.sires(), answers.young());
        made.inheritance(model, read, answers.young(), weighted);
        List<Animal> parents = mating.parents();
        for (int i = 0; i < parents.size(); i++) {
            Sex sex = i == parents.size() - 1 ? Sex.FEMALE : Sex.MALE;
            made.phase("the " + mating.role(i), parents.get(i), sex, model, read);
            made.omitted("the " + mating.role(i), parents.get(i));
            made.told(compiled, parents.get(i).takenAsTold())
                    .lit(parents.get(i).takenAsLit())
                    .named(parents.get(i).names());
        }
        if (compiled.dependsOnSex(mating.view())) {
            made.sexes(answers.young());
        }
        if (mating.losesAny()) {
            made.someDie(mating.view().census().word(), answers.young());
        } else if (mating.view().census() != Census.CONCEIVED) {
            made.allLive(answers.young());
        }
        if (draft.because.stream().anyMatch(MatingFrame::isChance) || (draft.unexplained && mayBeChance())) {
            made.chance();
        }
        made.stage(answers.young().every(), asked.stage(), compiled, mating.takenAsTold())
                .lit(mating.takenAsLit());
        asked.litter().ifPresent(made::litterSize);
        boolean linked = model.groups().values().stream()
                .anyMatch(group -> group.loci().stream().filter(read::contains).count() > 1);
        draft.populations.forEach(population ->
                made.weighting(population, linked, !model.viability().isEmpty()));
    }

    /** Whether chance decides about a look, and not only about who is lost. */
    private static boolean isChance(Reason reason) {
        return reason instanceof Way way
                && way.factors().keySet().stream().anyMatch(name -> name.startsWith("/traits/"));
    }

    /** Whether chance may decide about a look of any animal. */
    private boolean mayBeChance() {
        return compiled.diagram(mating.view()).levels().stream()
                .anyMatch(level -> level instanceof Level.OfDraw && level.name().startsWith("/traits/"));
    }

    /** The statements on which looks of the kits may rest, whatever the ways to them. */
    Set<String> behindKits() {
        Set<String> found = new LinkedHashSet<>();
        List<Animal> parents = mating.parents();
        GenotypeSet dam = parents.get(parents.size() - 1).genotypes();
        for (Animal male : parents.subList(0, parents.size() - 1)) {
            GenotypeSet sire = male.genotypes();
            found.addAll(Inherited.statements(
                    compiled, List.of(sire, dam), Inherited.pairs(model, sire, dam, mating.lociRead()), mating.view()));
        }
        return found;
    }

    /** The statements on which the share of lost kits rests: who is lost of those that there may be, and what makes them so. */
    Set<String> behindLosses() {
        Census census = mating.view().census();
        Set<String> found = new LinkedHashSet<>();
        List<Animal> parents = mating.parents();
        GenotypeSet dam = parents.get(parents.size() - 1).genotypes();
        for (Animal male : parents.subList(0, parents.size() - 1)) {
            for (Viability one : model.viability().values()) {
                if (census == Census.SCORED || (census == Census.BORN && one.decidesBirth())) {
                    found.addAll(Inherited.losses(model, male.genotypes(), dam, one));
                }
            }
        }
        return found;
    }

    /** The populations that weigh something: those named for parents that are uncertain where it matters. */
    Set<Population> populationsUsed() {
        Set<String> read = mating.lociRead();
        Set<Population> used = new LinkedHashSet<>();
        for (Animal parent : mating.parents()) {
            if (!parent.uncertain(read).isEmpty()) {
                parent.population().ifPresent(used::add);
            }
        }
        return used;
    }

    /** The statements by which looks of the parents narrow down what they carry. */
    Set<String> behindLooks() {
        Set<String> found = new LinkedHashSet<>();
        mating.parents().forEach(parent -> found.addAll(answers.behindLooks(parent, mating.lociRead())));
        return found;
    }

    /** Whether what is known of one parent excludes every genotype. */
    boolean isContradictory(int parent) {
        List<Animal> parents = mating.parents();
        Animal unknown = Animal.unknown(compiled);
        boolean dam = parent == parents.size() - 1;
        return UncertainCross.of(
                        compiled,
                        Sires.of((dam ? unknown : parents.get(parent)).parent()),
                        (dam ? parents.get(parent) : unknown).parent())
                .isContradictory();
    }

    /** Raised by every look that may occur or was seen, also in traits that were not asked for. */
    private List<Caution> cautions(UncertainCross cross) {
        Situation situation = Situation.of("mating").with(asked.relation());
        for (Animal parent : mating.parents()) {
            situation = situation.with(
                    Role.PARENT,
                    answers.cautionLooks(
                            parent,
                            named -> PossibleLooks.of(compiled, parent.genotypes(), named, LifeStage.unstated())));
        }
        List<Phenotype> seen = new ArrayList<>();
        asked.seen().forEach(kit -> seen.add(kit.look()));
        seen.add(Phenotype.unspecified());
        for (Phenotype kit : seen) {
            situation = situation.with(Role.OFFSPRING, answers.cautionLooks(kit, named -> kits(cross, kit, named)));
        }
        return answers.cautions(situation);
    }

    /** The looks of kits that do not contradict what was seen of one; at any stage where that of the question leaves it open. */
    private Set<Phenotype> kits(UncertainCross cross, Phenotype seen, List<String> named) {
        return cross.isContradictory()
                ? ImmutableSet.of()
                : PossibleLooks.atAnyStage(
                                model, asked.stage(), when -> cross.possible(new View(named, when, asked.census())))
                        .stream()
                        .filter(look -> look.restrictedTo(seen.traits()).equals(seen.restrictedTo(look.traits())))
                        .collect(ImmutableSet.toImmutableSet());
    }
}
