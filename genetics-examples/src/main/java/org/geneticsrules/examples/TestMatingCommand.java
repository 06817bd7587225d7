package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.HiddenAllele;
import org.geneticsrules.answer.TestMate;
import org.geneticsrules.answer.TestMatingQuestion;
import org.geneticsrules.cross.LitterSize;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.Model;
import org.geneticsrules.model.Population;
import org.geneticsrules.probability.Probability;
import org.geneticsrules.trait.Sex;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** Says which test matings would show what an animal hides. */
@Command(
        name = "test-mating",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Says which test matings would show what an animal hides, and how many kits that takes.",
        footer = {
            "",
            "It advises no mating: records already held and a DNA test come first, and matings that may harm",
            "the kits or are of close kin are left out unless they are asked for by the name of the caution.",
            "",
            "Does the dark-eyed hob Fennick carry albino?",
            "  genetics test-mating --sex male --look \"eye colour: dark\" --carries albino",
            "What if the one albino jill at hand has litters of six, and his sister was albino?",
            "  genetics test-mating --sex male --look \"eye colour: dark\" --carries albino \\",
            "      --mate \"c/c\" --litters-of 6 --likely 2/3",
            "What would his own daughters by a clear jill tell?",
            "  genetics test-mating --sex male --look \"eye colour: dark\" --carries albino \\",
            "      --own-young --mate \"C/C\" --in-spite-of \"close mating\""
        })
final class TestMatingCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private OutputChoice output;

    @Option(
            names = "--sex",
            paramLabel = "SEX",
            required = true,
            description = "The sex of the animal: female or male.")
    private String sex = "";

    @Option(names = "--genotype", paramLabel = "GENOTYPE", description = "What is known of its genotype.")
    private @Nullable String genotype;

    @Option(
            names = "--look",
            paramLabel = "LOOK",
            description = {
                "What it looks like, \"trait: state, ...\", or looked like, \"... @ week 8, in daylight\".",
                "Once for each time it was looked at."
            })
    private List<String> looks = new ArrayList<>();

    @Option(
            names = "--carries",
            paramLabel = "NAMES",
            description = {
                "What it may carry: alleles by word or letter, separated by commas.",
                "Default: all that it may hide."
            })
    private @Nullable String carries;

    @Option(
            names = "--mate",
            paramLabel = "GENOTYPE",
            description = "What is known of the mate's genotype. Default: the mates that tell most.")
    private @Nullable String mate;

    @Option(names = "--mate-look", paramLabel = "LOOK", description = "What the mate looks like; once for each time.")
    private List<String> mateLooks = new ArrayList<>();

    @Option(
            names = "--own-young",
            description = "The mates are its own daughters or sons, and --mate and --mate-look "
                    + "describe their other parent.")
    private boolean ownYoung;

    @Option(
            names = "--sure",
            paramLabel = "CHANCES",
            defaultValue = "95 %, 99 %",
            description = "How surely a carrier shall be found out, separated by commas. Default: 95 %%, 99 %%.")
    private String sure = "95 %, 99 %";

    @Option(names = "--litters-of", paramLabel = "N", description = "How many kits a litter has, to count litters too.")
    private @Nullable Integer litter;

    @Option(
            names = "--likely",
            paramLabel = "CHANCE",
            description = {
                "How likely it is to carry the allele, before any test, for example 2/3:",
                "then it is said too when it may be believed clear."
            })
    private @Nullable String likely;

    @Option(
            names = "--in-spite-of",
            paramLabel = "CAUTION",
            description = "The name of a caution that leaves a mating out, to have it all the same; once for each.")
    private List<String> inSpiteOf = new ArrayList<>();

    @Option(
            names = "--population",
            paramLabel = "NAME",
            description = "The population whose frequencies weigh what is not known of the animals.")
    private @Nullable String population;

    @Mixin
    private AskedOptions asked;

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        CompiledModel compiled = answers.compiled();
        Model model = compiled.model();
        Sex known = Inputs.sex("--sex", sex);
        Animal animal = from(
                Inputs.animal(compiled, "--genotype", genotype, "--look", looks, asked.omitted())
                        .ofSex(known),
                model);
        TestMatingQuestion question = TestMatingQuestion.of(animal)
                .carrying(alleles(model))
                .by(mates(compiled, model, known))
                .inTraits(asked.traits())
                .at(asked.stage(model))
                .withConfidence(confidences())
                .inSpiteOf(inSpiteOf);
        Integer kits = litter;
        if (kits != null) {
            question = question.inLittersOf(LitterSize.of(Inputs.count("--litters-of", kits, 1, 30)));
        }
        String before = likely;
        if (before != null) {
            question = question.likely(Inputs.chance("--likely", before));
        }
        return output.print(
                answers.testMatings(question), model, "", spec.commandLine().getOut());
    }

    private List<HiddenAllele> alleles(Model model) {
        return Inputs.names(carries).stream()
                .map(name -> Inputs.reading("--carries", name, () -> HiddenAllele.find(model, name)))
                .toList();
    }

    private List<TestMate> mates(CompiledModel compiled, Model model, Sex known) {
        if (mate == null && mateLooks.isEmpty() && !ownYoung) {
            return List.of();
        }
        Animal described =
                from(Inputs.animal(compiled, "--mate", mate, "--mate-look", mateLooks, asked.omitted()), model);
        return List.of(
                ownYoung
                        ? TestMate.ownYoung(known == Sex.MALE ? "own daughters" : "own sons", described)
                        : TestMate.of("the mate", described));
    }

    private List<Probability> confidences() {
        List<Probability> chances = Inputs.names(sure).stream()
                .map(chance -> Inputs.chance("--sure", chance))
                .toList();
        if (chances.isEmpty() || chances.stream().anyMatch(Probability::isOne)) {
            throw new InputException("problem: --sure needs chances below 1; no number of kits makes it certain\n");
        }
        return chances;
    }

    private Animal from(Animal animal, Model model) {
        return Inputs.population(model, population)
                .map((Population named) -> animal.from(named))
                .orElse(animal);
    }
}
