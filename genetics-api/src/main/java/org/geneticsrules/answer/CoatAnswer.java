package org.geneticsrules.answer;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.caution.Role;
import org.geneticsrules.caution.Situation;
import org.geneticsrules.explanation.Cause;
import org.geneticsrules.explanation.Causes;
import org.geneticsrules.explanation.CoatExplanation;
import org.geneticsrules.explanation.Hidden;
import org.geneticsrules.explanation.Reason;
import org.geneticsrules.explanation.RestsOn;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.expression.View;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.GenotypeSet;
import org.geneticsrules.model.Locus;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** Puts one answer about an animal's look together. */
final class CoatAnswer {

    private final Answers answers;
    private final CompiledModel compiled;
    private final Animal animal;
    private final List<String> traits;

    CoatAnswer(Answers answers, CoatQuestion question) {
        this.answers = answers;
        this.compiled = answers.compiled();
        this.animal = question.animal();
        this.traits = answers.traits(question.traits());
    }

    Answer answer() {
        GenotypeSet known = animal.genotypes();
        if (known.isEmpty()) {
            return assemble(
                    "What is stated of the animal contradicts itself under this model: no genotype has that look and those"
                            + " alleles. Re-examine the record, or the model.",
                    Status.UNDECIDED,
                    ImmutableList.of(),
                    ImmutableSet.of(),
                    ImmutableList.of(),
                    ImmutableSet.of());
        }
        Set<Phenotype> looks = PossibleLooks.of(compiled, known, traits);
        Set<String> uncertain = animal.uncertain(compiled.lociRead(traits));
        if (uncertain.isEmpty()) {
            Genotype genotype = example(known);
            CoatExplanation explained = CoatExplanation.of(compiled, genotype, Sex.FEMALE, View.of(traits))
                    .outcomes()
                    .iterator()
                    .next();
            return assemble(
                    "The animal shows " + Verdicts.words(explained.phenotype(), traits) + ".",
                    Status.EXACT,
                    new ArrayList<>(explained.looks()),
                    looks,
                    explained.hidden(),
                    explained.statements());
        }
        List<Hidden> hidden = new ArrayList<>();
        List<Reason> because = new ArrayList<>();
        for (Phenotype look : looks) {
            GenotypeSet behind = known.and(compiled.showing(look));
            hidden.addAll(hidden(look, behind));
            if (looks.size() == 1) {
                because.addAll(CoatExplanation.of(compiled, example(behind), Sex.FEMALE, View.of(traits))
                        .outcomes()
                        .iterator()
                        .next()
                        .looks());
            }
        }
        Map<String, List<AllelePair>> carried = new LinkedHashMap<>();
        compiled.lociRead(traits).forEach(locus -> carried.put(locus, known.pairs(locus)));
        String verdict = looks.size() == 1
                ? "The animal shows " + Verdicts.words(looks.iterator().next(), traits) + "; at "
                        + String.join(", ", uncertain) + " its look leaves the genotype open."
                : "What is known allows " + looks.size() + " looks; more must be seen or tested to tell them apart.";
        return assemble(verdict, Status.EXACT, because, looks, hidden, RestsOn.of(compiled, carried, View.of(traits)));
    }

    /** The loci at which more than one pair lies behind a look. */
    private List<Hidden> hidden(Phenotype look, GenotypeSet behind) {
        List<Hidden> hidden = new ArrayList<>();
        for (String name : compiled.lociRead(traits)) {
            List<AllelePair> alternatives = behind.pairs(name);
            if (alternatives.size() > 1) {
                hidden.add(new Hidden(name, look, alternatives, Optional.empty(), causes(name, behind)));
            }
        }
        return hidden;
    }

    /** Causes box by box, since what hides a locus may differ from one box to the next. */
    private List<Cause> causes(String name, GenotypeSet behind) {
        Set<Cause> causes = new LinkedHashSet<>();
        for (Map<String, List<AllelePair>> box : behind.boxes()) {
            List<AllelePair> alternatives = Objects.requireNonNull(box.get(name));
            if (alternatives.size() > 1) {
                Map<String, String> expressions = new LinkedHashMap<>();
                for (String read : compiled.lociRead(traits)) {
                    Locus locus = answers.model().locus(read);
                    expressions.put(
                            read,
                            locus.expression(
                                    Objects.requireNonNull(box.get(read)).get(0), Sex.FEMALE));
                }
                causes.addAll(Causes.in(compiled, View.of(traits), Sex.FEMALE, Map.of())
                        .of(expressions, name, alternatives));
            }
        }
        if (causes.isEmpty()) {
            causes.add(new Cause(Cause.Kind.SAME_LOOK, ImmutableList.of()));
        }
        return new ArrayList<>(causes);
    }

    private Genotype example(GenotypeSet set) {
        List<AllelePair> pairs = new ArrayList<>();
        set.boxes().get(0).values().forEach(allowed -> pairs.add(allowed.get(0)));
        return Genotype.of(answers.model(), pairs);
    }

    private Answer assemble(
            String verdict,
            Status status,
            List<Reason> because,
            Set<Phenotype> looks,
            List<Hidden> hidden,
            Set<String> statements) {
        EvidenceLevel evidence = answers.evidence(statements, ImmutableList.of());
        List<Phenotype> seen =
                answers.cautionLooks(animal.looks(), named -> PossibleLooks.of(compiled, animal.genotypes(), named));
        return new Answer(
                new Question(
                        "coat",
                        "How does this animal's look come about, and what does it not tell?",
                        traits,
                        Optional.empty(),
                        ImmutableList.of()),
                verdict,
                status,
                Optional.empty(),
                animal.given().isEmpty() ? ImmutableList.of("nothing stated") : animal.given(),
                new Assumptions()
                        .model(answers.model())
                        .omitted("animal", animal)
                        .list(),
                because,
                looks.stream()
                        .map(look -> new Outcome(look, Optional.empty(), ImmutableSet.of()))
                        .toList(),
                Optional.empty(),
                ImmutableList.of(),
                hidden,
                Answers.rivals(evidence),
                answers.cautions(Situation.of("coat").with(Role.ANIMAL, seen)),
                evidence,
                answers.model().reference(),
                animal.notices());
    }
}
