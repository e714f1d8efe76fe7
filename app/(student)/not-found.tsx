import { NotHere } from "@/components/ui/not-here";

export default function NotFound() {
  return <NotHere />;
}
