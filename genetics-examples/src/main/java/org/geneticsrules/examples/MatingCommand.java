package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.MatingQuestion;
import org.geneticsrules.answer.PossibleSires;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.cross.PunnettSquare;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.render.SquareText;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Foresees what the kits of a mating may show. */
@Command(
        name = "mating",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Foresees what the kits of a mating may show.",
        footer = {
            "",
            "Of each parent a genotype, a look, both or neither may be stated. Without --population an uncertain",
            "parent leaves what is possible; what is probable is then given for each population of the model.",
            "",
            "The hob Tarn and the jill Wicket both carry albino and brown:",
            "  genetics mating --sire \"C/c B/b\" --dam \"C/c B/b\" --omitted wild-type --traits \"hue, eye colour\"",
            "How likely is an albino among eight kits of Fennick and Osprel, of whom only the look is known?",
            "  genetics mating --sire-look \"eye colour: dark\" --dam-look \"eye colour: dark\" \\",
            "      --look \"eye colour: pink\" --kits 8",
            "Two hobs ran with Wicket, and any kit may be of either:",
            "  genetics mating --sire \"C/c\" --other-sire \"C/C\" --shared-litter --dam \"C/c\" \\",
            "      --look \"eye colour: pink\" --litter-sizes \"own records: 6 1/4, 7 1/2, 8 1/4\"",
            "",
            "A trait that changes with age or season is refused until --weeks, --moult or --season is stated."
        })
final class MatingCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private OutputChoice output;

    @Mixin
    private SireOptions sires;

    @Option(names = "--dam", paramLabel = "GENOTYPE", description = "The dam's genotype.")
    private @Nullable String dam;

    @Option(
            names = "--dam-look",
            paramLabel = "LOOK",
            description = "What the dam looks like, or looked like, \"... @ week 8\"; once for each time.")
    private List<String> damLooks = new ArrayList<>();

    @Option(
            names = "--sire-called",
            paramLabel = "NAME",
            description =
                    "What the sire was called, and by whose words, \"sandy in British Isles\"; when, and at which "
                            + "stage, \"... on 1998-11-02 @ moult 2\"; once for each name. For one sire only.")
    private List<String> sireCalled = new ArrayList<>();

    @Option(names = "--dam-called", paramLabel = "NAME", description = "What the dam was called, likewise.")
    private List<String> damCalled = new ArrayList<>();

    @Mixin
    private OwnVocabularies vocabularies;

    @Mixin
    private AskedOptions asked;

    @Mixin
    private LitterOptions litter;

    @Option(
            names = "--population",
            paramLabel = "NAME",
            description = "The population whose frequencies weigh what is not known of the parents.")
    private @Nullable String population;

    @Option(
            names = "--relation",
            paramLabel = "RELATION",
            defaultValue = "unknown",
            description = "How the parents are related: unknown (default), unrelated, parent-offspring, siblings, "
                    + "half-siblings.")
    private String relation = "unknown";

    @Option(names = "--square", description = "Add the Punnett square of the loci at which the parents are known.")
    private boolean square;

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        CompiledModel compiled = answers.compiled();
        Model model = compiled.model();
        PossibleSires males = sires.sires(compiled, asked.omitted());
        Animal jill = parent(
                called(
                        "--dam-called",
                        damCalled,
                        Sex.FEMALE,
                        Inputs.animal(compiled, "--dam", dam, "--dam-look", damLooks, asked.omitted()),
                        model),
                model);
        List<Animal> sired = new ArrayList<>(males.males());
        if (sired.size() > 1 && !sireCalled.isEmpty()) {
            throw new InputException("problem: --sire-called does not say which of " + sired.size()
                    + " males was called so; describe them by --sire-look and --other-sire-look\n");
        }
        sired.set(0, called("--sire-called", sireCalled, Sex.MALE, sired.get(0), model));
        PossibleSires hobs = new PossibleSires(
                sired.stream().map(male -> parent(male, model)).toList(), males.access(), males.perKit());
        MatingQuestion question = MatingQuestion.of(hobs, jill)
                .inTraits(asked.traits())
                .at(asked.stage(model))
                .between(Inputs.relation(relation));
        question = litter.addTo(question, model);
        String more = square && !output.isJson()
                ? "\n" + SquareText.of(square(compiled, hobs.males().get(0), jill, question))
                : "";
        return output.print(
                answers.mating(question), model, more, spec.commandLine().getOut());
    }

    /** What a name says may depend on the sex, which a parent has by its part in the mating. */
    private Animal called(String option, List<String> names, Sex sex, Animal animal, Model model) {
        return names.isEmpty()
                ? animal
                : CalledNames.called(option, names, animal.ofSex(sex), model, vocabularies.all(model));
    }

    private Animal parent(Animal animal, Model model) {
        return Inputs.population(model, population)
                .map((Population named) -> animal.from(named))
                .orElse(animal);
    }

    /** Of the loci that matter to the question and are known in both parents, those at which a parent has two alleles to give. */
    private static PunnettSquare square(CompiledModel compiled, Animal hob, Animal jill, MatingQuestion question) {
        Set<String> asked = new LinkedHashSet<>(question.traits());
        question.event().map(Phenotype::traits).ifPresent(asked::addAll);
        asked.remove(Sex.VARIABLE);
        Set<String> read = compiled.lociRead(asked.isEmpty() ? compiled.model().visibleTraits() : asked);
        List<AllelePair> fromHob = new ArrayList<>();
        List<AllelePair> fromJill = new ArrayList<>();
        List<String> loci = new ArrayList<>();
        for (String locus : read) {
            List<AllelePair> his = hob.genotypes().of(Sex.MALE).pairs(locus);
            List<AllelePair> hers = jill.genotypes().of(Sex.FEMALE).pairs(locus);
            boolean known = his.size() == 1 && hers.size() == 1;
            if (known && !(his.get(0).isHomozygous() && hers.get(0).isHomozygous())) {
                loci.add(locus);
                fromHob.add(his.get(0));
                fromJill.add(hers.get(0));
            }
        }
        return Cross.of(compiled, Genotype.of(compiled.model(), fromHob), Genotype.of(compiled.model(), fromJill))
                .square(loci);
    }
}
