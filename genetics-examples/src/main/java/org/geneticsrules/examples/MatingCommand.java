package org.geneticsrules.examples;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import org.geneticsrules.answer.Animal;
import org.geneticsrules.answer.Answers;
import org.geneticsrules.answer.MatingQuestion;
import org.geneticsrules.cross.Cross;
import org.geneticsrules.cross.PunnettSquare;
import org.geneticsrules.expression.CompiledModel;
import org.geneticsrules.model.AllelePair;
import org.geneticsrules.model.Genotype;
import org.geneticsrules.model.OmittedLoci;
import org.geneticsrules.model.Population;
import org.geneticsrules.render.SquareText;
import org.geneticsrules.trait.Phenotype;
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
            "      --look \"eye colour: pink\" --kits 8"
        })
final class MatingCommand implements Callable<Integer> {

    @Spec
    private CommandSpec spec;

    @Mixin
    private ModelChoice choice;

    @Mixin
    private OutputChoice output;

    @Option(names = "--sire", paramLabel = "GENOTYPE", description = "The sire's genotype, for example \"C/c B/-\".")
    private @Nullable String sire;

    @Option(names = "--dam", paramLabel = "GENOTYPE", description = "The dam's genotype.")
    private @Nullable String dam;

    @Option(
            names = "--sire-look",
            paramLabel = "LOOK",
            description = "What the sire looks like, \"trait: state, ...\".")
    private @Nullable String sireLook;

    @Option(names = "--dam-look", paramLabel = "LOOK", description = "What the dam looks like.")
    private @Nullable String damLook;

    @Option(
            names = "--omitted",
            paramLabel = "MEANING",
            defaultValue = "unknown",
            description = "What it means that a genotype does not name a locus: unknown (default) or wild-type.")
    private String omitted = "unknown";

    @Option(
            names = "--population",
            paramLabel = "NAME",
            description = "The population whose frequencies weigh what is not known of the parents.")
    private @Nullable String population;

    @Option(
            names = "--relation",
            paramLabel = "RELATION",
            defaultValue = "unknown",
            description = {
                "How the parents are related: unknown (default), unrelated, parent-offspring, siblings, half-siblings."
            })
    private String relation = "unknown";

    @Option(
            names = "--traits",
            paramLabel = "NAMES",
            description = "The traits asked for, separated by commas. Default: all the model rules.")
    private @Nullable String traits;

    @Option(names = "--look", paramLabel = "LOOK", description = "A look asked for in particular.")
    private @Nullable String look;

    @Option(names = "--kits", paramLabel = "N", description = "How many kits --look is asked about, 1 to 30.")
    private @Nullable Integer kits;

    @Option(names = "--seen", paramLabel = "LOOK", description = "What a kit seen already looks like; once per kit.")
    private List<String> seen = new ArrayList<>();

    @Option(names = "--square", description = "Add the Punnett square of the loci at which the parents are known.")
    private boolean square;

    @Override
    public Integer call() {
        output.isJson(); // a misspelt format is found before the work
        Answers answers = choice.answers();
        CompiledModel compiled = answers.compiled();
        OmittedLoci convention = Inputs.omitted(omitted);
        Animal hob = parent(Inputs.animal(compiled, "--sire", sire, "--sire-look", sireLook, convention), compiled);
        Animal jill = parent(Inputs.animal(compiled, "--dam", dam, "--dam-look", damLook, convention), compiled);
        MatingQuestion question = MatingQuestion.of(hob, jill)
                .inTraits(Inputs.names(traits))
                .between(Inputs.relation(relation))
                .havingSeen(seen.stream()
                        .map(kit -> Inputs.look("--seen", compiled.model(), kit))
                        .toList());
        if (look != null) {
            question = question.lookingFor(Inputs.look("--look", compiled.model(), look));
        }
        if (kits != null) {
            question = question.inLitterOf(kits);
        }
        String more = square && !output.isJson() ? "\n" + SquareText.of(square(compiled, hob, jill, question)) : "";
        return output.print(
                answers.mating(question),
                compiled.model(),
                more,
                spec.commandLine().getOut());
    }

    private Animal parent(Animal animal, CompiledModel compiled) {
        return Inputs.population(compiled.model(), population)
                .map((Population named) -> animal.from(named))
                .orElse(animal);
    }

    /** Of the loci that matter to the question and are known in both parents, those at which a parent has two alleles to give. */
    private static PunnettSquare square(CompiledModel compiled, Animal hob, Animal jill, MatingQuestion question) {
        Set<String> asked = new LinkedHashSet<>(question.traits());
        question.event().map(Phenotype::traits).ifPresent(asked::addAll);
        Set<String> read = compiled.lociRead(asked.isEmpty() ? compiled.model().visibleTraits() : asked);
        List<AllelePair> fromHob = new ArrayList<>();
        List<AllelePair> fromJill = new ArrayList<>();
        List<String> loci = new ArrayList<>();
        for (String locus : read) {
            List<AllelePair> his = hob.genotypes().pairs(locus);
            List<AllelePair> hers = jill.genotypes().pairs(locus);
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
